#include "sheets/Plot.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

// Whole steps inside from … to, as multiples of the step.
struct Steps {
    double first = 0;
    double last = 0;
};

Steps stepsIn(double from, double to, double step) {
    constexpr double slack = 1e-9;
    return {std::ceil(from / step - slack), std::floor(to / step + slack)};
}

// The finest step of 1, 2 or 5 times a power of ten that has no more than `most` ticks.
double stepFor(double from, double to, int most) {
    double decade = std::pow(10.0, std::floor(std::log10((to - from) / most)));
    for (;; decade *= 10)
        for (const double times : {1.0, 2.0, 5.0}) {
            const Steps steps = stepsIn(from, to, decade * times);
            if (steps.last - steps.first + 1 <= most)
                return decade * times;
        }
}

}  // namespace

PlotAxis evenAxis(double from, double to, std::string title, int most,
                  const std::function<std::string(double at, int decimals)>& words) {
    PlotAxis axis{from, to, std::move(title), {}};
    const double step = stepFor(from, to, most);
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
    const Steps steps = stepsIn(from, to, step);
    for (double k = steps.first; k <= steps.last; ++k) {
        const double at = std::clamp(k == 0 ? 0.0 : k * step, from, to);
        axis.ticks.push_back({at, words(at, decimals)});
    }
    return axis;
}

}  // namespace rackbook
