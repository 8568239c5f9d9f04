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

std::string pigmentsText(const Lot& lot, const SheetWords& words) {
    std::vector<std::string> parts = lot.pigments;
    for (const DrierMetal& metal : lot.drierMetals)
        parts.push_back(
            metal.contentShare
                ? words.filled("metalContent",
                               {{"metal", metalText(metal.metal, words)},
                                {"share", words.shortFigure(*metal.contentShare * 100)}})
                : metalText(metal.metal, words));
    const bool asksForSome = lot.lotKind == LotKind::ink || lot.lotKind == LotKind::drier;
    return parts.empty() && asksForSome ? words("notRecorded") : words.inRow(parts);
}

}  // namespace rackbook
