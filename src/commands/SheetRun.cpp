#include "commands/SheetRun.h"

#include "commands/BoxValues.h"
#include "commands/PullRecords.h"
#include "commands/SheetPortion.h"
#include "sheets/BenchFields.h"

namespace rackbook {

namespace {

bool isTickedFor(const FilledBoxes& boxes, const char* field, const Impression& impression) {
    return boxes.isTicked(benchFieldName(*findBenchField(std::string("sheet.x.") + field),
                                         boxes.sheet().edition.code, impression.workingNumber));
}

// A spoiled one was printed, whether that is ticked too or not.
void addImpressions(FilledBoxes& boxes, PullTold& told) {
    const bool all = boxes.isTicked(everyPrinted);
    for (const Impression& impression : boxes.sheet().listed) {
        const bool isSpoiled = isTickedFor(boxes, "spoiled", impression);
        if (isSpoiled)
            told.spoiled.push_back(impression);
        if (all || isSpoiled || isTickedFor(boxes, "printed", impression))
            told.printed.push_back(impression);
    }
    if (told.printed.empty())
        boxes.refuse(
            boxes.sheet().listed.size() > 1
                ? everyPrinted
                : benchFieldName(*findBenchField("sheet.x.printed"), boxes.sheet().edition.code,
                                 boxes.sheet().listed.front().workingNumber),
            "no impression is ticked as printed", "Tick those that were, or all.");
}

// The notes, then what was remarked of single impressions.
std::optional<std::string> noteIn(const FilledBoxes& boxes) {
    std::string note = boxes.text("pull.note");
    for (const Impression& impression : boxes.sheet().listed) {
        const std::string remark =
            boxes.text(benchFieldName(*findBenchField("sheet.x.remark"), boxes.sheet().edition.code,
                                      impression.workingNumber));
        if (!remark.empty())
            note += (note.empty() ? "" : "\n") + std::to_string(impression.workingNumber) + ": " +
                    remark;
    }
    return note.empty() ? std::nullopt : std::optional(note);
}

void addCircumstances(FilledBoxes& boxes, const RecordSet& records, PullTold& told) {
    Pull& pull = told.pull;
    if (const Party* printer = recordIn<Party>(boxes, "pull.printer", records))
        pull.printer = Ref<Party>{printer->id};
    if (const Mix* portion = recordIn<Mix>(boxes, "pull.portion", records))
        pull.portion = Ref<Mix>{portion->id};
    pull.press = wordsIn(boxes, "pull.press");
    pull.packing = wordsIn(boxes, "pull.packing");
    pull.temperature_C = numberIn(boxes, "pull.temperature_C");
    pull.humidity_pct = numberIn(boxes, "pull.humidity_pct");
    pull.inkBefore_g = massIn(boxes, "pull.inkBefore_g");
    pull.inkAfter_g = massIn(boxes, "pull.inkAfter_g");
    pull.note = noteIn(boxes);
    const Place* place = recordIn<Place>(boxes, "move.to", records);
    if (place && told.spoiled.size() < told.printed.size())
        told.hungAt = Ref<Place>{place->id};
}

// One without the other says nothing about what left the slab.
void requireBoth(FilledBoxes& boxes, const Pull& pull) {
    const auto require = [&](const char* filled, const char* missing, bool isMissing) {
        if (isMissing && !boxes.text(filled).empty() && boxes.text(missing).empty())
            boxes.refuse(missing, "it is not filled in, and the ink at the other end of the run is",
                         "Fill in both, or leave both out.");
    };
    require("pull.inkBefore_g", "pull.inkAfter_g", !pull.inkAfter_g);
    require("pull.inkAfter_g", "pull.inkBefore_g", !pull.inkBefore_g);
}

const std::map<std::string, std::string>& boxesOfPull() {
    static const std::map<std::string, std::string> boxes = {
        {"/start", "pull.start"},
        {"/end", "pull.end"},
        {"/portion", "pull.portion"},
        {"/printer", "pull.printer"},
        {"/press", "pull.press"},
        {"/packing", "pull.packing"},
        {"/temperature_C", "pull.temperature_C"},
        {"/humidity_pct", "pull.humidity_pct"},
        {"/inkBefore_g", "pull.inkBefore_g"},
        {"/inkAfter_g", "pull.inkAfter_g"},
        {"/note", "pull.note"}};
    return boxes;
}

RecordFromBoxes named(MadeRecord made, const ReturnedSheet& sheet) {
    if (Move* move = std::get_if<Move>(&made.record)) {
        move->id = sheet.idOf(RecordKind::move);
        return {std::move(made), {{"/to", "move.to"}, {"/at", "pull.day"}}};
    }
    const bool isPull = std::holds_alternative<Pull>(made.record);
    return {std::move(made),
            isPull ? boxesOfPull() : std::map<std::string, std::string>{{"/fateOn", "pull.day"}}};
}

}  // namespace

std::vector<RecordFromBoxes> recordsOfSheet(const BookFile& book, const RecordSet& records,
                                            FilledBoxes& boxes) {
    const ReturnedSheet& sheet = boxes.sheet();
    const std::string day = dayIn(boxes).value_or("2000-01-01");
    PullTold told;
    told.edition = sheet.edition;
    told.pull.id = sheet.idOf(RecordKind::pull);
    told.pull.layer = {sheet.layer.id};
    told.pull.start = momentIn(boxes, "pull.start", day).value_or(EdtfDate::parse(day));
    told.pull.end = momentIn(boxes, "pull.end", day);
    addImpressions(boxes, told);
    addCircumstances(boxes, records, told);
    requireBoth(boxes, told.pull);
    std::vector<RecordFromBoxes> made = portionOfSheet(records, boxes, told.pull.start);
    if (!boxes.findings().empty())
        return {};
    if (!made.empty())
        told.pull.portion = Ref<Mix>{sheet.idOf(RecordKind::mix)};
    for (MadeRecord& record : recordsOfPull(book, told))
        made.push_back(named(std::move(record), sheet));
    return made;
}

}  // namespace rackbook
