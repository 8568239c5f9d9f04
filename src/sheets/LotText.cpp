#include "sheets/LotText.h"

#include <algorithm>

namespace rackbook {

const std::vector<std::string>& metalsWithWords() {
    static const std::vector<std::string> metals = {
        "aluminium", "barium",    "bismuth",  "calcium",  "cerium",    "cobalt",
        "copper",    "iron",      "lead",     "lithium",  "manganese", "potassium",
        "zinc",      "strontium", "vanadium", "zirconium"};
    return metals;
}

std::string metalText(const std::string& metal, const SheetWords& words) {
    std::string name = metal;
    for (char& c : name)
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    const std::vector<std::string>& known = metalsWithWords();
    return std::find(known.begin(), known.end(), name) == known.end() ? metal
                                                                      : words("metal." + name);
}

namespace {

std::vector<std::string> metalTexts(const Lot& lot, const SheetWords& words) {
    std::vector<std::string> metals;
    for (const DrierMetal& metal : lot.drierMetals)
        metals.push_back(
            metal.contentShare
                ? words.filled("metalContent",
                               {{"metal", metalText(metal.metal, words)},
                                {"share", words.shortFigure(*metal.contentShare * 100)}})
                : metalText(metal.metal, words));
    return metals;
}

std::string joined(const Lot& lot, const std::vector<std::string>& parts, const SheetWords& words) {
    const bool asksForSome = lot.lotKind == LotKind::ink || lot.lotKind == LotKind::drier;
    return parts.empty() && asksForSome ? words("notRecorded") : words.inRow(parts);
}

}  // namespace

std::string pigmentsText(const Lot& lot, const SheetWords& words) {
    std::vector<std::string> parts = lot.pigments;
    const std::vector<std::string> metals = metalTexts(lot, words);
    parts.insert(parts.end(), metals.begin(), metals.end());
    return joined(lot, parts, words);
}

std::string contentText(const Lot& lot, const SheetWords& words) {
    const bool isStated =
        std::any_of(lot.drierMetals.begin(), lot.drierMetals.end(),
                    [](const DrierMetal& metal) { return metal.contentShare.has_value(); });
    if (!isStated)
        return pigmentsText(lot, words);
    std::vector<std::string> parts = lot.pigments;
    parts.push_back(words.filled("ofDrier", {{"metals", words.inRow(metalTexts(lot, words))}}));
    return joined(lot, parts, words);
}

}  // namespace rackbook
