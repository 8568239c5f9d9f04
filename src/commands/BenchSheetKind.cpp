#include "commands/BenchSheetKind.h"

#include "sheets/BenchSheet.h"

namespace rackbook {

namespace {

// Its record says what is needed to take it back when it is filled in (see TakeSheet.h).
SheetAbout aboutBench(const BenchFacts& facts) {
    SheetAbout about;
    about.edition = facts.layer.edition.id;
    about.layer = facts.layer.id;
    for (const BenchImpression& impression : facts.impressions)
        about.impressions.push_back(impression.id);
    return about;
}

std::vector<PageModel> makeBench(const SheetRequest& request) {
    const BenchFacts facts = benchFactsOf(request.records, *request.subject.layer, request.asOf);
    BenchSheet sheet = benchSheet(facts, request.sheetTemplate, request.measurer, request.created);
    sheet.model.files.push_back(request.recordBehind(aboutBench(facts)));
    return {std::move(sheet.model)};
}

}  // namespace

SheetKind benchSheetKind() {
    SheetKind kind;
    kind.name = "bench";
    kind.what =
        "is for a printing day of one layer: a form, to be filled in with a pencil, or as a PDF "
        "that "
        "rackbook take-sheet takes back";
    kind.subject = SubjectKind::layer;
    kind.rules = benchSheetRules;
    kind.make = makeBench;
    return kind;
}

}  // namespace rackbook
