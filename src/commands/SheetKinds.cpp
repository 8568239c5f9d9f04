#include "commands/SheetKinds.h"

#include "base/Error.h"
#include "base/Text.h"
#include "commands/BenchSheetKind.h"
#include "commands/CertificateSheetKind.h"
#include "commands/DrawerSheetKind.h"
#include "commands/LabelSheetKinds.h"
#include "commands/LedgerSheetKind.h"
#include "commands/MixesSheetKind.h"
#include "commands/ReadinessAsked.h"
#include "commands/RecipeSheetKind.h"
#include "commands/StockSheetKind.h"
#include "commands/TransferSheetKind.h"
#include "sheets/EditionSheet.h"
#include "sheets/ReadinessSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> makeEdition(const SheetRequest& request) {
    const Edition& edition = *request.subject.edition;
    EditionFacts facts = editionFactsOf(request.records, edition, request.asOf);
    facts.photograph = newestPhotograph(attachmentsOfEdition(request.records, edition.id),
                                        request.pictureOf, request.asOf);
    return {editionSheet(facts, request.sheetTemplate, request.measurer, request.created)};
}

std::vector<PageModel> makeReadiness(const SheetRequest& request) {
    return {readinessSheet(readinessFactsOf(request.records, readinessAsked(request)),
                           request.sheetTemplate, request.measurer, request.created)};
}

SheetKind editionSheetKind() {
    SheetKind kind;
    kind.name = "edition";
    kind.what = "documents one edition, from its records";
    kind.subject = SubjectKind::edition;
    kind.rules = editionSheetRules;
    kind.make = makeEdition;
    return kind;
}

SheetKind readinessSheetKind() {
    SheetKind kind;
    kind.name = "readiness";
    kind.what = "says which impressions may be put away, what to do first, and why";
    kind.subject = SubjectKind::anyEdition;
    kind.depth.light = true;
    kind.rules = readinessSheetRules;
    kind.make = makeReadiness;
    kind.isDated = true;
    return kind;
}

}  // namespace

const std::vector<SheetKind>& sheetKinds() {
    static const std::vector<SheetKind> kinds = {
        editionSheetKind(),   certificateSheetKind(),  ledgerSheetKind(),
        recipeSheetKind(),    mixesSheetKind(),        stockSheetKind(),
        readinessSheetKind(), benchSheetKind(),        transferSheetKind(),
        drawerSheetKind(),    drawerLabelsSheetKind(), sleeveLabelsSheetKind(),
    };
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

SheetDepth depthOf(const SheetKind& kind, bool namesHolders) {
    SheetDepth depth = kind.depth;
    depth.privacy.namesHolders = namesHolders && kind.mayNameHolders;
    return depth;
}

std::string fitForFile(const std::string& words) {
    std::string name;
    for (const char c : words) {
        const bool odd = (c >= 0 && c <= ' ') || c == '/' || c == '\\' || c == ':';
        name += odd ? '-' : c;
    }
    return !name.empty() && name.front() == '.' ? "-" + name : name;
}

std::string recordName(const SheetKind& kind, const SheetAbout& about) {
    const std::string one =
        about.impressions.size() == 1 ? fitForFile(about.impressions.front()) + "-" : "";
    return one + kind.name + ".json";
}

void giveNameOfItsOwn(std::string& name, std::set<std::string>& taken) {
    const auto small = [](std::string words) {
        for (char& c : words)
            c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        return words;
    };
    const std::size_t end = name.rfind('.');
    const std::string beginning = name.substr(0, end);
    const std::string ending = name.substr(end);
    for (int copy = 2; !taken.insert(small(name)).second; ++copy)
        name = beginning + "-" + std::to_string(copy) + ending;
}

SheetAbout aboutSubject(const SheetSubject& subject) {
    SheetAbout about;
    const auto idOfIt = [](const auto& record) {
        return record ? std::optional(record->id) : std::nullopt;
    };
    about.edition = idOfIt(subject.edition);
    for (const Impression& impression : subject.impressions)
        about.impressions.push_back(impression.id);
    about.layer = idOfIt(subject.layer);
    about.mix = idOfIt(subject.mix);
    about.transfer = idOfIt(subject.transfer);
    about.place = idOfIt(subject.place);
    return about;
}

}  // namespace rackbook
