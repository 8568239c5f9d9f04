#include "calc/PlanSearch.h"

#include <algorithm>
#include <cmath>

#include "calc/PlanTrial.h"

namespace rackbook {

namespace {

constexpr int bisections = 30;
// Rounding can help sizes that are a little too small for exact masses.
constexpr double exactSlack = 1.03;
constexpr int fineSteps = 1000;
constexpr double fineStep = 0.0005;
constexpr double coarseStep = 0.01;

bool isWithin(const Layout& layout, const PlanCase& planCase, Rounding rounding) {
    return PlanTrial(layout, planCase, rounding).isWithin();
}

// The least size between the two that keeps the limit, as near as the steps go. `sized` gives the
// layout of a size.
template <class Sized>
std::optional<double> leastSize_g(double low_g, double high_g, const PlanCase& planCase,
                                  const Sized& sized) {
    PlanCase slack = planCase;
    slack.limit *= exactSlack;
    const auto keepsExactly = [&](double size_g) {
        return isWithin(sized(size_g), slack, Rounding::exact);
    };
    double from_g = low_g;
    if (!keepsExactly(low_g)) {
        double to_g = high_g;
        if (!keepsExactly(high_g))
            return std::nullopt;
        for (int i = 0; i < bisections; ++i) {
            const double middle_g = (from_g + to_g) / 2;
            (keepsExactly(middle_g) ? to_g : from_g) = middle_g;
        }
        from_g = to_g;
    }
    double size_g = from_g;
    for (int steps = 0; size_g <= high_g; ++steps) {
        if (isWithin(sized(size_g), planCase, Rounding::toReadability))
            return size_g;
        const double step = steps < fineSteps ? fineStep : coarseStep;
        size_g += std::max(step * size_g, planCase.balance.readability_g);
    }
    return std::nullopt;
}

void shrinkEach(Layout& layout, const PlanCase& planCase) {
    for (std::size_t i = 0; i + 1 < layout.size(); ++i) {
        const auto sized = [&](double size_g) {
            Layout changed = layout;
            changed[i].least_g = size_g;
            return changed;
        };
        if (const auto size_g = leastSize_g(0, layout[i].least_g, planCase, sized))
            layout[i].least_g = *size_g;
    }
}

}  // namespace

std::optional<Layout> enlargedAsAWhole(const Layout& layout, const PlanCase& planCase) {
    const auto sized = [&](double size_g) {
        Layout changed = layout;
        changed.back().least_g = size_g;
        return changed;
    };
    const auto size_g = leastSize_g(planCase.wanted_g, planCase.most_g, planCase, sized);
    return size_g ? std::make_optional(sized(*size_g)) : std::nullopt;
}

std::optional<Layout> enlargedBefore(const Layout& layout, const PlanCase& planCase) {
    const PlanTrial asNeeded(layout, planCase, Rounding::exact);
    std::vector<double> parts(layout.size());
    for (std::size_t i = 0; i + 1 < layout.size(); ++i)
        parts[i] = std::cbrt(asNeeded.weakness(i));
    const double most = *std::max_element(parts.begin(), parts.end());
    if (most <= 0)
        return std::nullopt;
    const auto sized = [&](double size_g) {
        Layout changed = layout;
        for (std::size_t i = 0; i + 1 < layout.size(); ++i)
            changed[i].least_g = size_g * parts[i] / most;
        return changed;
    };
    const auto size_g = leastSize_g(0, planCase.most_g, planCase, sized);
    if (!size_g)
        return std::nullopt;
    Layout found = sized(*size_g);
    shrinkEach(found, planCase);
    return found;
}

}  // namespace rackbook
