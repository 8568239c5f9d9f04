#include "commands/TransferSheetKind.h"

#include "base/Error.h"
#include "sheets/TransferSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> make(const SheetRequest& request) {
    const Transfer& transfer = *request.subject.transfer;
    if (transfer.agreedOn.earliest() > request.asOf)
        throw UsageError(transfer.id + " was agreed on " + transfer.agreedOn.text() +
                             ", after the day that this sheet is to speak of",
                         "Give a later day with --on.");
    return {transferSheet(
        transferFactsOf(request.records, transfer, request.asOf, request.namesHolders),
        request.sheetTemplate, request.measurer, request.created)};
}

}  // namespace

// The record of a transfer names its two parties by itself. Holders stay out of the records inside
// all the same: who has an impression today is not the business of those who once had it.
SheetKind transferSheetKind() {
    SheetKind kind;
    kind.name = "transfer";
    kind.what =
        "goes with impressions that are consigned, sold, lent, given or returned, with "
        "their price and terms; --with-holders adds the contacts of both parties";
    kind.subject = SubjectKind::transfer;
    kind.depth.privacy.tellsTransfers = true;
    kind.mayNameHolders = false;
    kind.rules = transferSheetRules;
    kind.make = make;
    return kind;
}

}  // namespace rackbook
