#include "calc/Composition.h"

#include <algorithm>
#include <map>
#include <utility>

namespace rackbook {

namespace {

void add(Estimate& sum, const Estimate& share, double factor) {
    sum.low = std::min(1.0, sum.low + share.low * factor);
    sum.best += share.best * factor;
    sum.high = std::min(1.0, sum.high + share.high * factor);
}

}  // namespace

Composition compositionOf(const MixContents& contents, const std::vector<Lot>& lots) {
    std::map<std::pair<LotKind, std::vector<std::string>>, Estimate> parts;
    std::map<std::string, Estimate> metals;
    Composition found;
    for (const MixPart& part : contents.parts) {
        if (part.share.high <= 0)
            continue;
        const Lot& lot = lots[static_cast<std::size_t>(part.constituent)];
        std::vector<std::string> pigments;
        if (lot.lotKind == LotKind::ink)
            pigments = lot.pigments;
        std::sort(pigments.begin(), pigments.end());
        add(parts.try_emplace({lot.lotKind, pigments}, Estimate::exactly(0)).first->second,
            part.share, 1);
        if (lot.lotKind != LotKind::drier)
            continue;
        found.hasUnstatedMetals = found.hasUnstatedMetals || lot.drierMetals.empty();
        for (const DrierMetal& metal : lot.drierMetals) {
            if (metal.contentShare)
                add(metals.try_emplace(metal.metal, Estimate::exactly(0)).first->second, part.share,
                    *metal.contentShare);
            else
                found.hasUnstatedMetals = true;
        }
    }
    for (const auto& [what, share] : parts)
        found.parts.push_back({what.first, what.second, share});
    std::stable_sort(found.parts.begin(), found.parts.end(),
                     [](const CompositionPart& a, const CompositionPart& b) {
                         return a.share.high > b.share.high;
                     });
    for (const auto& [metal, share] : metals)
        found.metals.push_back({metal, share});
    return found;
}

}  // namespace rackbook
