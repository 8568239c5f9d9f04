#include "commands/LedgerSheetKind.h"

#include "sheets/LedgerSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> make(const SheetRequest& request) {
    ReadinessQuestion question;
    question.asOf = request.asOf;
    question.edition = request.subject.edition ? request.subject.edition->id : std::string();
    question.namesHolders = request.namesHolders;
    question.atGallery = request.sheetTemplate.label("atGallery");
    question.atHolder = request.sheetTemplate.label("atHolder");
    return {ledgerSheet(ledgerFactsOf(request.records, question), request.sheetTemplate,
                        request.measurer, request.created)};
}

}  // namespace

SheetKind ledgerSheetKind() {
    SheetKind kind;
    kind.name = "ledger";
    kind.what = "lists every impression, what became of it, where it is and how ready";
    kind.subject = SubjectKind::anyEdition;
    kind.depth.light = true;
    kind.rules = ledgerSheetRules;
    kind.make = make;
    kind.isDated = true;
    return kind;
}

}  // namespace rackbook
