#include "commands/StockSheetKind.h"

#include "commands/StockFactsOf.h"
#include "sheets/StockSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> makeStock(const SheetRequest& request) {
    return {stockSheet(stockSheetFactsOf(request.records, request.asOf), request.sheetTemplate,
                       request.measurer, request.created)};
}

}  // namespace

SheetKind stockSheetKind() {
    SheetKind kind;
    kind.name = "stock";
    kind.what = "lists tins, tubes and bottles: what is left, how old they are, where they stand";
    kind.subject = SubjectKind::book;
    kind.depth.stock = true;
    kind.depth.printed = {
        {RecordKind::book, {"studio"}},
        {RecordKind::place, {"name", "placeKind", "within"}},
        {RecordKind::lot,
         {"lotKind", "colourWords", "pigments", "container", "netMass_g", "openedOn", "finishedOn",
          "place"}},
        {RecordKind::stockTake, {"lot", "at", "mass_g"}},
        {RecordKind::weighing, {"at", "lot", "mass_g", "massLow_g", "massHigh_g"}}};
    kind.rules = stockSheetRules;
    kind.make = makeStock;
    kind.isDated = true;
    return kind;
}

}  // namespace rackbook
