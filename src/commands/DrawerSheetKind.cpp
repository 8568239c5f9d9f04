#include "commands/DrawerSheetKind.h"

#include "commands/DrawerFactsOf.h"
#include "sheets/DrawerSheet.h"
#include "sheets/JoinedModels.h"

namespace rackbook {

namespace {

// Each drawer begins a page of its own, to be put into it.
std::vector<PageModel> make(const SheetRequest& request) {
    const Place& place = *request.subject.place;
    SheetAbout about;
    about.place = place.id;
    std::vector<PageModel> models;
    for (const DrawerWithFacts& drawer : drawersWithFactsOf(request.records, place, request.asOf)) {
        models.push_back(
            drawerSheet(drawer.facts, request.sheetTemplate, request.measurer, request.created));
        about.impressions.insert(about.impressions.end(), drawer.impressions.begin(),
                                 drawer.impressions.end());
    }
    if (models.size() > 1)
        models.front().info.title = place.name;
    PageModel joined = joinedModels(std::move(models));
    joined.files.push_back(request.recordBehind(about));
    joined.files.back().name = "drawer.json";
    return {std::move(joined)};
}

}  // namespace

SheetKind drawerSheetKind() {
    SheetKind kind;
    kind.name = "drawer";
    kind.what =
        "says what lies in a drawer or a box, or in those within a place, and what of it "
        "must come out to light";
    kind.subject = SubjectKind::place;
    kind.depth.making = false;
    kind.depth.light = true;
    kind.depth.verdictsOnly = true;
    kind.depth.printed = {
        {RecordKind::book, {"studio"}},
        {RecordKind::edition, {"code", "title"}},
        {RecordKind::impression, {"edition", "workingNumber", "designation", "signedOn", "fate"}},
        {RecordKind::look, {"impressions", "standsFor", "at", "touch", "colour"}}};
    kind.rules = drawerSheetRules;
    kind.make = make;
    kind.isDated = true;
    return kind;
}

}  // namespace rackbook
