#include "calc/LotLikeness.h"

#include <cmath>
#include <map>
#include <optional>
#include <set>

namespace rackbook {

namespace {

// Labels give contents to a tenth of a per cent or so: ratios this close are the same.
constexpr double sameRatio = 0.02;

using Contents = std::map<std::string, std::optional<double>>;

Contents contentsOf(const LotOnShelf& lot) {
    Contents contents;
    for (const DrierMetal& metal : lot.drierMetals)
        contents[metal.metal] = metal.contentShare;
    return contents;
}

LotLikeness likenessOfDriers(const Contents& needed, const Contents& other) {
    LotLikeness likeness;
    if (needed.empty() || needed.size() != other.size())
        return likeness;
    double neededSum = 0;
    double otherSum = 0;
    std::vector<double> ratios;
    for (auto a = needed.begin(), b = other.begin(); a != needed.end(); ++a, ++b) {
        if (a->first != b->first)
            return likeness;
        const double from = a->second.value_or(0);
        const double to = b->second.value_or(0);
        likeness.contentNotStated = likeness.contentNotStated || from <= 0 || to <= 0;
        ratios.push_back(from / to);
        neededSum += from;
        otherSum += to;
    }
    likeness.alike = true;
    if (likeness.contentNotStated)
        return likeness;
    likeness.factor = neededSum / otherSum;
    for (const double ratio : ratios)
        likeness.metalsDiffer = likeness.metalsDiffer ||
                                std::fabs(ratio - likeness.factor) > sameRatio * likeness.factor;
    return likeness;
}

}  // namespace

LotLikeness likenessOf(const LotOnShelf& needed, const LotOnShelf& other) {
    LotLikeness likeness;
    if (needed.lotKind != other.lotKind)
        return likeness;
    if (needed.lotKind == LotKind::base) {
        likeness.alike = true;
        likeness.baseDiffers = true;
        return likeness;
    }
    if (needed.lotKind == LotKind::drier)
        return likenessOfDriers(contentsOf(needed), contentsOf(other));
    const std::set<std::string> pigments(needed.pigments.begin(), needed.pigments.end());
    const std::set<std::string> others(other.pigments.begin(), other.pigments.end());
    const bool sameWords = needed.lotKind == LotKind::modifier && !needed.colourWords.empty() &&
                           needed.colourWords == other.colourWords;
    likeness.alike = pigments == others && (!pigments.empty() || sameWords);
    return likeness;
}

}  // namespace rackbook
