#include "commands/LedgerSheetKind.h"

#include "commands/ReadinessAsked.h"
#include "sheets/LedgerSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> make(const SheetRequest& request) {
    return {ledgerSheet(ledgerFactsOf(request.records, readinessAsked(request)),
                        request.sheetTemplate, request.measurer, request.created)};
}

}  // namespace

SheetKind ledgerSheetKind() {
    SheetKind kind;
    kind.name = "ledger";
    kind.what = "lists every impression, what became of it, where it is and how ready";
    kind.subject = SubjectKind::anyEdition;
    kind.depth.making = false;
    kind.depth.light = true;
    kind.depth.verdictsOnly = true;
    kind.depth.transfers = true;
    kind.rules = ledgerSheetRules;
    kind.make = make;
    kind.isDated = true;
    return kind;
}

}  // namespace rackbook
