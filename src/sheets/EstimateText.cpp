#include "sheets/EstimateText.h"

#include "calc/EstimateMath.h"

namespace rackbook {

std::string estimateText(const Estimate& value, int decimals, const SheetWords& words) {
    const Estimate held = atLeastNothing(value);
    const auto figure = [&](double one) { return words.figure(one, decimals); };
    const std::string best = held.isKnown() ? figure(held.best) : std::string();
    const auto with = [&](const std::string& range) {
        return best.empty() ? range : best + " (" + range + ")";
    };
    if (std::isinf(held.high))
        return held.low > 0 ? with(words.filled("orMore", {{"value", figure(held.low)}}))
                            : (best.empty() ? words("notKnown") : best);
    const std::string low = figure(held.low);
    const std::string high = figure(held.high);
    if (low == high)
        return high;
    return with(held.low <= 0 && best.empty() ? words.filled("upTo", {{"value", high}})
                                              : low + "–" + high);
}

}  // namespace rackbook
