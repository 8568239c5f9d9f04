#include "commands/BenchSheetKind.h"

#include "sheets/BenchSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> makeBench(const SheetRequest& request) {
    return {benchSheet(benchFactsOf(request.records, *request.subject.layer, request.asOf),
                       request.sheetTemplate, request.measurer, request.created)
                .model};
}

}  // namespace

SheetKind benchSheetKind() {
    SheetKind kind;
    kind.name = "bench";
    kind.what = "is blank, to be filled in by hand on a printing day of one layer";
    kind.subject = SubjectKind::layer;
    kind.rules = benchSheetRules;
    kind.make = makeBench;
    return kind;
}

}  // namespace rackbook
