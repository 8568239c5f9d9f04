#include "sheets/LotText.h"

namespace rackbook {

std::string pigmentsText(const Lot& lot, const SheetWords& words) {
    std::vector<std::string> parts = lot.pigments;
    for (const DrierMetal& metal : lot.drierMetals)
        parts.push_back(
            metal.contentShare
                ? words.filled("metalContent",
                               {{"metal", metal.metal},
                                {"share", words.shortFigure(*metal.contentShare * 100)}})
                : metal.metal);
    const bool asksForSome = lot.lotKind == LotKind::ink || lot.lotKind == LotKind::drier;
    return parts.empty() && asksForSome ? words("notRecorded") : words.inRow(parts);
}

}  // namespace rackbook
