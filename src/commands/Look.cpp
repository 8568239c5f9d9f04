#include "commands/Look.h"

#include <algorithm>
#include <set>

#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/Recording.h"
#include "commands/SheetSelection.h"
#include "records/Look.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// The others that the sample speaks for: whatever was looked at speaks for itself.
std::vector<Ref<Impression>> standsForGiven(const CommandContext& context, const BookFile& book,
                                            const std::vector<Ref<Impression>>& lookedAt) {
    const std::optional<std::string> words = context.arguments.value("stands-for");
    if (!words)
        return {};
    const std::set<Ref<Impression>> seen(lookedAt.begin(), lookedAt.end());
    std::vector<Ref<Impression>> others = refsTo(sheetsNamed(book, *words).sheets);
    others.erase(std::remove_if(others.begin(), others.end(),
                                [&](const Ref<Impression>& ref) { return seen.count(ref) != 0; }),
                 others.end());
    return others;
}

ExitCode run(CommandContext& context) {
    const Arguments& arguments = context.arguments;
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    Look look;
    look.at = momentGivenOrNow(context, studio, "at");
    look.id = freshId(RecordKind::look, look.at);
    look.impressions = refsTo(sheetsNamed(book, arguments.text("sheets")).sheets);
    look.standsFor = standsForGiven(context, book, look.impressions);
    if (const std::optional<std::string> touch = arguments.value("touch"))
        look.touch = enumFrom<Touch>(*touch);
    if (const std::optional<std::string> colour = arguments.value("colour"))
        look.colour = enumFrom<LookColour>(*colour);
    if (!look.touch && !look.colour)
        throw UsageError("a look says how it feels or how it looks",
                         "Give --touch, --colour or both.");
    look.note = arguments.value("note");
    return recordMade(context, book, {{look, std::nullopt}});
}

}  // namespace

Command lookCommand() {
    CommandSpec spec;
    spec.name = "look";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Record what the eye and a fingertip found");
    spec.details =
        "SHEETS is an edition's code for all its kept impressions, a code with working numbers "
        "such as TIDE:1-12,15, or ids of impressions with commas between.\n\n"
        "Colour is told beside what it should be: turned where it went brownish, returning, true. "
        "A sample may stand for the sheets that dried beside it.";
    spec.positionals = {{"sheets", "The impressions looked at."}};
    spec.options = {
        choiceOption("touch", "TOUCH", "How the ink feels.", enumNames<Touch>()),
        choiceOption("colour", "COLOUR", "How the colour looks.", enumNames<LookColour>()),
        valueOption("stands-for", "SHEETS", "Other impressions that these speak for."),
        valueOption("at", "DATE", "When: a date, a date with a time, or a time of today.", "now"),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook look EEL:3,11 --touch dry --colour returning --stands-for EEL",
                      "Two sheets looked at for the whole edition."}};
    return {spec, run};
}

}  // namespace rackbook
