#include "commands/MixesSheetKind.h"

#include "sheets/MixBookSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> makeMixes(const SheetRequest& request) {
    const std::optional<std::string> edition =
        request.subject.edition ? std::optional(request.subject.edition->id) : std::nullopt;
    return {mixBookSheet(mixBookFactsOf(request.records, edition, request.asOf),
                         request.sheetTemplate, request.measurer, request.created)};
}

}  // namespace

SheetKind mixesSheetKind() {
    SheetKind kind;
    kind.name = "mixes";
    kind.what = "is the mix book: what went into each mix, what was taken from it, what is left";
    kind.subject = SubjectKind::anyEdition;
    kind.depth.mixes = true;
    kind.depth.printed = {
        {RecordKind::book, {"studio"}},
        {RecordKind::lot, {"lotKind", "colourWords"}},
        {RecordKind::mix, {"name", "purpose", "drierFree", "edition", "madeOn", "finishedOn"}},
        {RecordKind::weighing,
         {"mix", "act", "at", "sequence", "lot", "fromMix", "mass_g", "massLow_g", "massHigh_g"}},
        {RecordKind::edition, {"code", "title"}},
        {RecordKind::layer, {"edition", "ordinal", "mix"}},
        {RecordKind::pull,
         {"layer", "start", "portion", "impressions", "inkBefore_g", "inkAfter_g"}}};
    kind.rules = mixBookSheetRules;
    kind.make = makeMixes;
    kind.isDated = true;
    return kind;
}

}  // namespace rackbook
