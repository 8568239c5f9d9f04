#include "sheets/ShareText.h"

namespace rackbook {

namespace {

constexpr int extenderDecimals = 1;
constexpr int drierDecimals = 2;

}  // namespace

std::string shareText(const Estimate& share, int decimals, const SheetWords& words) {
    if (share.isKnown() && printsAsOne(share, decimals))
        return words.percent(share.best, decimals);
    if (share.low <= 0 && share.high >= 1)
        return words("notRecorded");
    const std::string range = words.percentRange(share, decimals);
    return share.isKnown() ? words.percent(share.best, decimals) + " (" + range + ")" : range;
}

std::string extenderText(const Estimate& share, bool isRemembered, const SheetWords& words) {
    if (!isRemembered)
        return shareText(share, extenderDecimals, words);
    if (share.best <= 0)
        return words("layers.rememberedNone");
    return words.filled("layers.remembered", {{"share", words.percent(share.best, 0)}});
}

bool showsEstimates(const Estimate& extenderShare, bool isRemembered, const Estimate& drierShare) {
    return isRemembered || !printsAsOne(extenderShare, extenderDecimals) ||
           !printsAsOne(drierShare, drierDecimals);
}

}  // namespace rackbook
