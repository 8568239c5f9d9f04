#include "commands/LabelSheetKinds.h"

#include "base/Error.h"
#include "calc/HistoryOf.h"
#include "calc/PlaceLight.h"
#include "sheets/DrawerLabels.h"
#include "sheets/SleeveLabels.h"

namespace rackbook {

namespace {

std::vector<PageModel> makeDrawerLabels(const SheetRequest& request) {
    DrawerLabelsFacts facts;
    if (!request.records.of<Book>().empty())
        facts.studio = request.records.of<Book>().front().studio;
    const History history = historyOf(request.records);
    const PlaceLight light(history);
    for (std::size_t i = 0; i < request.records.of<Place>().size(); ++i) {
        const Place& place = request.records.of<Place>()[i];
        if (isStorage(place) && !light.isOutOfHands(static_cast<int>(i)))
            facts.places.push_back(place);
    }
    if (facts.places.empty())
        throw UsageError("the studio has no drawer, box or shelf",
                         "Enter one: rackbook enter place ID name=NAME placeKind=drawer.");
    return {drawerLabels(facts, request.sheetTemplate, request.measurer, request.created)};
}

std::vector<PageModel> makeSleeveLabels(const SheetRequest& request) {
    return {sleeveLabels(sleeveLabelsFactsOf(request.records, *request.subject.edition,
                                             request.subject.impressions, request.asOf),
                         request.sheetTemplate, request.measurer, request.created)};
}

}  // namespace

SheetKind drawerLabelsSheetKind() {
    SheetKind kind;
    kind.name = "drawer-labels";
    kind.what = "is labels with QR codes for all drawers, boxes and shelves of the studio";
    kind.subject = SubjectKind::book;
    kind.depth.storage = true;
    kind.depth.printed = {{RecordKind::book, {"studio"}},
                          {RecordKind::place, {"name", "placeKind", "capacity"}}};
    kind.rules = drawerLabelsRules;
    kind.make = makeDrawerLabels;
    return kind;
}

SheetKind sleeveLabelsSheetKind() {
    SheetKind kind;
    kind.name = "sleeve-labels";
    kind.what = "is labels with QR codes for the sleeves of impressions";
    kind.subject = SubjectKind::impressions;
    kind.depth.making = false;
    kind.depth.printed = {
        {RecordKind::edition, {"code", "title", "year", "sheetHeight_mm", "sheetWidth_mm"}},
        {RecordKind::impression, {"edition", "workingNumber", "designation", "signedOn"}}};
    kind.rules = sleeveLabelsRules;
    kind.make = makeSleeveLabels;
    return kind;
}

}  // namespace rackbook
