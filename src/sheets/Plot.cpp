#include "sheets/Plot.h"

#include <cmath>

namespace rackbook {

namespace {

double stepFor(double span, int most) {
    const double least = span / most;
    const double decade = std::pow(10.0, std::floor(std::log10(least)));
    for (const double times : {1.0, 2.0, 5.0})
        if (decade * times >= least * (1 - 1e-9))
            return decade * times;
    return decade * 10;
}

}  // namespace

PlotAxis evenAxis(double from, double to, std::string title, int most,
                  const std::function<std::string(double at, int decimals)>& words) {
    PlotAxis axis{from, to, std::move(title), {}};
    const double step = stepFor(to - from, most);
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
    const double slack = step * 1e-6;
    for (double k = std::ceil((from - slack) / step); k * step <= to + slack; ++k) {
        const double at = k == 0 ? 0.0 : k * step;
        axis.ticks.push_back({at, words(at, decimals)});
    }
    return axis;
}

}  // namespace rackbook
