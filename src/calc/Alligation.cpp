#include "calc/Alligation.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/PercentText.h"

namespace rackbook {

namespace {

void requireShare(double share, const char* ofWhat) {
    if (!(share >= 0 && share <= 1))
        throw InputError("blend", std::string("the share ") + ofWhat + " is " + percentText(share),
                         "Give a share between 0 % and 100 %.");
}

void requireMass(double mass_g, const char* ofWhat) {
    if (!std::isfinite(mass_g) || mass_g <= 0)
        throw InputError("blend",
                         std::string("the mass ") + ofWhat + " is " + formatShortest(mass_g) + " g",
                         "Give a mass above 0 g.");
}

void requireRange(const Estimate& share, const char* ofWhat) {
    if (!share.isKnown())
        throw InputError("blend", std::string("the share ") + ofWhat + " is not known",
                         "Give its best value.");
    requireShare(share.low, ofWhat);
    requireShare(share.best, ofWhat);
    requireShare(share.high, ofWhat);
    if (share.low > share.best || share.best > share.high)
        throw InputError(
            "blend",
            std::string("the best value of the share ") + ofWhat + " lies outside its own bounds",
            "Give bounds around it.");
}

void requireRanges(const Estimate& first, const Estimate& second) {
    requireRange(first, "in the first");
    requireRange(second, "in the second");
}

Estimate shareOf(const BlendMasses& masses, const Estimate& first, const Estimate& second) {
    const double weight = masses.second_g / masses.total_g();
    const auto between = [weight](double a, double b) { return a + weight * (b - a); };
    return {between(first.low, second.low), between(first.best, second.best),
            between(first.high, second.high)};
}

}  // namespace

BlendParts partsToReach(double target, double first, double second) {
    requireShare(target, "wanted");
    requireShare(first, "in the first");
    requireShare(second, "in the second");
    const auto [low, high] = std::minmax(first, second);
    if (target < low || target > high)
        throw InputError("blend", "the two cannot be blended to hold " + percentText(target),
                         low == high
                             ? "They reach " + percentText(low) + " only."
                             : "They reach " + percentText(low) + " to " + percentText(high) + ".");
    if (first == second)
        return {1, 0};
    return {(target - second) / (first - second), (first - target) / (first - second)};
}

BlendMasses blendOfMass(double total_g, double target, const Estimate& first,
                        const Estimate& second) {
    requireMass(total_g, "wanted");
    requireRanges(first, second);
    const BlendParts parts = partsToReach(target, first.best, second.best);
    BlendMasses masses{parts.first * total_g, parts.second * total_g, {}};
    masses.share = shareOf(masses, first, second);
    return masses;
}

BlendMasses blendByAdding(double first_g, double target, const Estimate& first,
                          const Estimate& second) {
    requireMass(first_g, "of the first");
    requireRanges(first, second);
    const BlendParts parts = partsToReach(target, first.best, second.best);
    if (parts.first == 0)
        throw InputError("blend",
                         "no mass of the second brings the first to " + percentText(target),
                         "Use the second alone.");
    BlendMasses masses{first_g, first_g * (parts.second / parts.first), {}};
    masses.share = shareOf(masses, first, second);
    return masses;
}

}  // namespace rackbook
