#include "commands/Pull.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/GivenValues.h"
#include "commands/HeapOnSlab.h"
#include "commands/LayerNamed.h"
#include "commands/MassGiven.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/PullRecords.h"
#include "commands/PulledBefore.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"
#include "records/Pull.h"

namespace rackbook {

namespace {

// Those of `printed` that --spoiled names.
std::vector<Impression> spoiledGiven(const CommandContext& context,
                                     const std::vector<Impression>& printed) {
    const std::optional<std::string> ranges = context.arguments.value("spoiled");
    if (!ranges)
        return {};
    std::vector<Impression> spoiled;
    std::vector<int> strangers;
    for (const int number : parseRanges(*ranges)) {
        const auto found =
            std::find_if(printed.begin(), printed.end(),
                         [&](const Impression& sheet) { return sheet.workingNumber == number; });
        if (found == printed.end())
            strangers.push_back(number);
        else
            spoiled.push_back(*found);
    }
    if (!strangers.empty())
        throw UsageError("--spoiled names " + formatRanges(strangers) + ", but pulled were " +
                             numbersOf(printed),
                         "Name sheets of this pull only.");
    return spoiled;
}

void setCircumstances(const CommandContext& context, const BookFile& book, Pull& pull) {
    const Arguments& arguments = context.arguments;
    pull.portion = refGiven<Mix>(context, book, "portion");
    pull.printer = refGiven<Party>(context, book, "printer");
    pull.press = arguments.value("press");
    pull.packing = arguments.value("packing");
    pull.temperature_C = arguments.number("temperature");
    pull.humidity_pct = arguments.number("humidity");
    pull.inkBefore_g = massOption(context, "pull", "ink-before", {nullptr, true});
    pull.inkAfter_g = massOption(context, "pull", "ink-after", {nullptr, true});
    pull.note = arguments.value("note");
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const Edition edition = editionNamed(book, context.arguments.text("edition"));
    Pull pull;
    pull.layer = {layerOf(book, edition, context.arguments.text("layer")).id};
    pull.start = momentGivenOrNow(context, studio, "start");
    pull.end = momentGivenOn(context, pull.start.earliest(), "end");
    pull.id = freshId(RecordKind::pull, pull.start);
    setCircumstances(context, book, pull);
    const std::vector<Impression> printed =
        sheetsNumbered(sheetsOf(book, edition), edition, context.arguments.text("range"));
    const std::vector<Impression> spoiled = spoiledGiven(context, printed);
    const std::vector<MadeRecord> made = recordsOfPull(
        book, {pull, edition, printed, spoiled, refGiven<Place>(context, book, "hang")});
    const std::string warnings[] = {oldHeapWords(book, pull),
                                    pulledBeforeWords(book, pull, edition, printed)};
    const ExitCode code = recordMade(context, book, made);
    for (const std::string& warning : warnings)
        if (!warning.empty())
            printParagraph(context.console, warning);
    return code;
}

std::vector<OptionSpec> pullOptions() {
    return {
        valueOption("portion", "MIX", "Id of the mix that it was printed with."),
        valueOption("spoiled", "RANGE", "Working numbers of sheets spoiled in this pull."),
        valueOption("start", "DATE", "When: a date, a date with a time, or a time of today.",
                    "now"),
        valueOption("end", "DATE",
                    "When the last sheet was off the block; a time alone is of the day it began."),
        valueOption("hang", "PLACE", "Id of the place where the good sheets hang afterwards."),
        valueOption("press", "WORDS", "The press, or hand and with what."),
        valueOption("packing", "WORDS", "What lay behind the sheet."),
        valueOption("temperature", "DEGREES", "Of the room, in degrees Celsius."),
        valueOption("humidity", "PERCENT", "Of the room, relative."),
        valueOption("ink-before", "MASS", "Ink on the slab before the first sheet."),
        valueOption("ink-after", "MASS", "Ink left on the slab after the last."),
        valueOption("printer", "PARTY", "Id of the party who printed."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
}

}  // namespace

Command pullCommand() {
    CommandSpec spec;
    spec.name = "pull";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate(
        "summary", "Record a printing run: one layer, on these sheets, with one portion of ink");
    spec.details =
        "A layer may be pulled in several runs; each sheet is made of the pulls it went through. "
        "Spoiled sheets are counted among those pulled, and count as spoiled from that day on. "
        "With --hang the good sheets are hung when the run ends, or begins where no end is given. "
        "A portion that is old by the house rules, and sheets that had the layer before, are "
        "pointed "
        "out, and recorded all the same. "
        "A date that is to come is recorded with a warning, since clocks go wrong; on a terminal "
        "the question asks first. Ink before and after is a mass in g, or with its unit behind it, "
        "such as 9,4g.";
    spec.positionals = {{"edition", "Code of the edition."},
                        {"layer", "Its place in the printing order, such as 3."},
                        {"range", "Working numbers of the sheets pulled, such as 1-12,15."}};
    spec.options = pullOptions();
    spec.writesBook = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook pull EEL 8 3,11,17 --portion eel-l8-b --spoiled 17 --hang line",
         "Three sheets, one of them spoiled; the other two go on the line."},
        {"rackbook pull EEL 8 25-27 --start 18:10 --end 19:00 --ink-before 9.4 --ink-after 6.1",
         "A run of this evening, with the ink weighed before and after."}};
    return {spec, run};
}

}  // namespace rackbook
