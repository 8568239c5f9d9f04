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
    kind.rules = stockSheetRules;
    kind.make = makeStock;
    kind.isDated = true;
    return kind;
}

}  // namespace rackbook
