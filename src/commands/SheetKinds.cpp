#include "commands/SheetKinds.h"

#include "base/Error.h"
#include "base/Text.h"
#include "sheets/EditionSheet.h"
#include "sheets/ReadinessSheet.h"

namespace rackbook {

namespace {

PageModel makeEdition(const SheetRequest& request) {
    return editionSheet(editionFactsOf(request.records, *request.edition, request.asOf),
                        request.sheetTemplate, request.measurer, request.created);
}

PageModel makeReadiness(const SheetRequest& request) {
    ReadinessQuestion question;
    question.asOf = request.asOf;
    question.edition = request.edition ? request.edition->id : std::string();
    question.namesHolders = request.namesHolders;
    question.atGallery = request.sheetTemplate.label("atGallery");
    question.atHolder = request.sheetTemplate.label("atHolder");
    return readinessSheet(readinessFactsOf(request.records, question), request.sheetTemplate,
                          request.measurer, request.created);
}

std::string editionFileName(const std::string& code, CivilMinute) {
    return code + "-edition";
}

std::string readinessFileName(const std::string& code, CivilMinute asOf) {
    return (code.empty() ? "" : code + "-") + "readiness-" + formatDay(asOf);
}

}  // namespace

const std::vector<SheetKind>& sheetKinds() {
    static const std::vector<SheetKind> kinds = {
        {"edition", "documents one edition, from its records", true, editionSheetRules, makeEdition,
         editionFileName},
        {"readiness", "says which impressions may be put away, what to do first, and why", false,
         readinessSheetRules, makeReadiness, readinessFileName}};
    return kinds;
}

std::vector<std::string> sheetNames() {
    std::vector<std::string> names;
    for (const SheetKind& kind : sheetKinds())
        names.push_back(kind.name);
    return names;
}

const SheetKind& sheetKindNamed(const std::string& name) {
    for (const SheetKind& kind : sheetKinds())
        if (name == kind.name)
            return kind;
    const std::optional<std::string> nearest = nearestName(name, sheetNames());
    throw UsageError(
        "there is no sheet \"" + excerpt(name) + "\"",
        nearest ? "Did you mean " + *nearest + "?" : "There are " + joined(sheetNames()) + ".");
}

}  // namespace rackbook
