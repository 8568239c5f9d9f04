#include "commands/Colour.h"

#include "commands/BookAccess.h"
#include "commands/ColourFacts.h"
#include "commands/JsonReport.h"
#include "commands/RecordNamed.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const HouseRules rules(bookRecordOf(book).houseRules);
    std::vector<ReadingFacts> facts;
    for (const char* name : {"reading", "other"})
        if (const std::optional<std::string> id = context.arguments.value(name))
            facts.push_back(readingFactsOf(book, recordNamed<Reading>(book, *id)));
    std::optional<Difference> difference;
    if (facts.size() == 2)
        difference = differenceOf(facts[0], facts[1]);
    if (context.arguments.has("json")) {
        Tree report = newReport("colour");
        Tree readings = Tree::array();
        for (const ReadingFacts& one : facts)
            readings.add(treeOf(one));
        report.set("readings", std::move(readings));
        report.set("difference", difference ? treeOf(*difference) : Tree());
        report.set("tolerance_dE00", rules.value("colourTolerance_dE00"));
        context.console.out() << jsonText(report);
    } else {
        for (std::size_t i = 0; i < facts.size(); ++i) {
            context.console.out() << (i > 0 ? "\n" : "");
            printReading(context.console, facts[i]);
        }
        if (difference)
            printDifference(context.console, facts[0], facts[1], *difference, rules);
    }
    const bool isOther =
        difference && difference->asMeasured_dE00 > rules.value("colourTolerance_dE00");
    return isOther ? ExitCode::findings : ExitCode::success;
}

}  // namespace

Command colourCommand() {
    CommandSpec spec;
    spec.name = "colour";
    spec.group = toTranslate("group", "Questions");
    spec.summary =
        toTranslate("summary", "Say what colour a reading is, and how far another one is from it");
    spec.details =
        "CIELAB, chroma, hue and visual density of a reading, from its spectrum under D50, D65, "
        "lamp light (A) and a fluorescent lamp (FL11), or as it was typed. Of two readings: the "
        "CIEDE2000 difference under D50 against the studio's tolerance, whether they were taken "
        "alike, and, of two spectra, how far a match under D50 would come apart in other light. A "
        "reading of an impression is worth what the last look before it says: while ink cures it "
        "is not its own colour. Exit code 1 where the two differ by more than the tolerance.";
    spec.positionals = {{"reading", "Id of the reading."},
                        {"other", "Id of the reading that is held against it.", false}};
    spec.reportsJson = true;
    spec.examples = {
        {"rackbook colour eel-straw-d50", "The colour of one drawdown."},
        {"rackbook colour eel-straw-d50 cotton-paper", "And what the paper is to it."}};
    return {spec, run};
}

}  // namespace rackbook
