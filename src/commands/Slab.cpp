#include "commands/Slab.h"

#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/GivenValues.h"
#include "commands/HeapOnSlab.h"
#include "commands/InkBook.h"
#include "commands/InkBookPart.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/SlabPlan.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

CivilMinute momentAsked(const CommandContext& context, const Book& studio) {
    const EdtfDate on = momentGivenOrNow(context, studio, "on");
    if (on.isBadlyKnown())
        throw UsageError("--on takes one day or one time",
                         "Write it as 2026-03-20, 2026-03-20T18:30 or 18:30.");
    return on.latest();
}

std::optional<double> temperatureAsked(const CommandContext& context) {
    const std::optional<double> given_C = context.arguments.number("temperature");
    if (given_C && !isRoomTemperature(*given_C))
        throw UsageError("--temperature is " + formatShortest(*given_C),
                         "Give the room's temperature in °C, from -50 to 100.");
    return given_C;
}

const char* verdictText(HeapVerdict verdict) {
    switch (verdict) {
        case HeapVerdict::lives:
            return "lives";
        case HeapVerdict::nearItsEnd:
            return "near its end";
        case HeapVerdict::past:
            return "past";
        default:
            return "cannot tell";
    }
}

const char* textOf(HeapVerdict verdict) {
    switch (verdict) {
        case HeapVerdict::lives:
            return "lives";
        case HeapVerdict::nearItsEnd:
            return "nearItsEnd";
        case HeapVerdict::past:
            return "past";
        default:
            return "cannotTell";
    }
}

void printUnknown(Console& console, const Slab& slab) {
    if (slab.unknown.empty())
        return;
    console.out() << "\n";
    printIndented(console, "Nothing was weighed into " + joined(slab.unknown) +
                               ", so nothing can be told of " +
                               (slab.unknown.size() == 1 ? "it." : "them."));
}

void printLeftOut(Console& console, const HouseRules& rules) {
    const double days = rules.value("heapLeftOut_days");
    console.out() << "\n";
    printIndented(console, "A heap that was past more than " + formatShortest(days) +
                               (days == 1 ? " day" : " days") +
                               " before is taken to be gone; --all shows such heaps too.");
}

void printHeaps(Console& console, const Slab& slab) {
    Table table({{"heap"},
                 {"what it is"},
                 {"g", Align::decimal},
                 {"drier"},
                 {"since"},
                 {"age", Align::right},
                 {"good until"},
                 {"verdict"}});
    for (const std::size_t mix : slab.heaps) {
        const HeapLife& life = slab.lives[mix];
        const Mix& heap = slab.ink.records.of<Mix>()[mix];
        table.addRow(
            {heap.id, heap.name, estimateWords(life.left_g, 1), life.holdsDrier ? "yes" : "no",
             life.since ? momentWords(*life.since) : "not known",
             life.since ? ageWords(life.age_h) : "",
             life.ends ? momentWords(*life.ends) : "not known", verdictText(life.verdict)});
    }
    console.out() << table.text(console.width(), "No heap is on the slab, by the book.");
    if (slab.heaps.empty() && !slab.withLeftOut)
        printLeftOut(console, slab.ink.rules);
}

void printWhatToDo(Console& console, const Slab& slab) {
    std::vector<std::string> past;
    for (const std::size_t mix : slab.heaps)
        if (slab.lives[mix].verdict == HeapVerdict::past)
            past.push_back(slab.ink.records.of<Mix>()[mix].id);
    if (past.empty())
        return;
    console.out() << "\n";
    printIndented(console,
                  "Past: " + joined(past) +
                      ". Try it on scrap before it goes into a print. What is scraped off is "
                      "recorded with rackbook weigh " +
                      past.front() +
                      " unknown --discard, a heap that is gone with rackbook enter mix " +
                      past.front() + " finishedOn=" + formatDay(slab.asOf) + " --changed-on " +
                      formatDay(slab.asOf) + ".");
}

void printWarmth(Console& console, const Slab& slab) {
    const double longer = lifeAt(1, slab.warmth.temperature_C);
    std::string text = "Reckoned for " + formatShortest(slab.warmth.temperature_C) + " °C, " +
                       slab.warmth.origin + ". ";
    if (std::abs(longer - 1) > 1e-9)
        text += "There a heap is taken to last " + formatFixed(longer, 2) +
                " times as long as at 20 °C: ";
    text += std::abs(longer - 1) > 1e-9 ? "ten degrees more halve it" : "Ten degrees more halve it";
    text +=
        " (the rule of van 't Hoff for most reactions; that it holds for ink is our "
        "assumption, without a source). Without drier a heap is old from its first addition, "
        "with drier from when the first drier went in; more than three quarters of its life "
        "is near its end.";
    console.out() << "\n";
    printIndented(console, text);
}

Tree slabTree(const Slab& slab) {
    Tree report = newReport("slab");
    report.set("at", formatMinute(slab.asOf));
    report.set("temperature_C", slab.warmth.temperature_C);
    report.set("temperatureOrigin", slab.warmth.origin);
    Tree heaps = Tree::array();
    for (const std::size_t mix : slab.heaps) {
        const HeapLife& life = slab.lives[mix];
        const Mix& heap = slab.ink.records.of<Mix>()[mix];
        Tree one = Tree::object();
        one.set("mix", heap.id).set("name", heap.name).set("left_g", treeOf(life.left_g));
        one.set("holdsDrier", life.holdsDrier).set("life_h", life.life_h);
        one.set("since", treeOf(*life.since)).set("age_h", treeOf(life.age_h));
        one.set("ends", treeOf(*life.ends)).set("verdict", textOf(life.verdict));
        heaps.add(std::move(one));
    }
    report.set("heaps", std::move(heaps));
    Tree unknown = Tree::array();
    for (const std::string& mix : slab.unknown)
        unknown.add(mix);
    report.set("nothingWeighedInto", std::move(unknown));
    report.set("houseRules", treeOf(slab.ink.rules, rulesOfHeaps()));
    return report;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const SlabQuestion question{momentAsked(context, bookRecordOf(book)), temperatureAsked(context),
                                context.arguments.has("all")};
    const Slab slab = slabOf(book, question);
    if (context.arguments.has("json")) {
        context.console.out() << jsonText(slabTree(slab));
        return ExitCode::success;
    }
    Console& console = context.console;
    console.out() << "On the slab, " << momentWords({slab.asOf, slab.asOf}) << "\n\n";
    printHeaps(console, slab);
    printUnknown(console, slab);
    if (slab.heaps.empty())
        return ExitCode::success;
    printWhatToDo(console, slab);
    printWarmth(console, slab);
    printHouseRules(console, slab.ink.rules, rulesOfHeaps());
    return ExitCode::success;
}

}  // namespace

Command slabCommand() {
    CommandSpec spec;
    spec.name = "slab";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary",
        "Say which heaps of ink are still there, how old they are and how long they last");
    spec.details =
        "Every mix that is not finished and still holds something by its weighings and pulls, but "
        "those "
        "that were past long ago: how "
        "much, since when, with drier or without, until when it can be printed from, and a "
        "verdict: lives, near its end, past, or cannot tell where the dates are known too badly. "
        "What ends first stands first. How long a heap lasts is a house rule, and warmth shortens "
        "it. The verdict is about the record; the eye and the knife decide.";
    spec.options = {
        flagOption("all", "Also heaps that were past so long ago that they are taken to be gone."),
        valueOption("on", "DATE",
                    "As of this time, of today too, as 18:30; or as of the end of this day.",
                    "now"),
        valueOption("temperature", "DEGREES", "Of the room, in degrees Celsius.",
                    "as last recorded with a run within the day before, else 20")};
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {{"rackbook slab", "What lies there now."},
                     {"rackbook slab --on 2026-02-21T20:00 --temperature 24",
                      "What lay there that evening, in a warm room."}};
    return {spec, run};
}

}  // namespace rackbook
