#include "commands/LightWantedVerb.h"

#include "commands/BookAccess.h"
#include "commands/LightOfStudio.h"
#include "commands/LightWantedReport.h"
#include "commands/OptionRows.h"
#include "commands/PlaceGiven.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    requireStudioPlace(studio);
    const History history = historyIn(book, {});
    const std::vector<ImpressionLabel> labels = labelsOf(book, history);
    const CivilMinute asOf = asOfDay(context, studio);
    StudioLight light = learntLightOf(book, studio, rules, history, asOf);
    const LightModel& model = *light.model();
    std::vector<std::string> lotIds;
    for (const Lot& lot : allOf<Lot>(book))
        lotIds.push_back(lot.id);
    const std::vector<ReadingDecay> decays = readingDecaysOf(
        history, labels, model.inks, allOf<Reading>(book), rules, light.ledger(), asOf);
    const LightWantedFacts facts{history, labels,       lotIds, rules,
                                 asOf,    model.wanted, decays, context.arguments.has("why")};
    if (context.arguments.has("json"))
        context.console.out() << jsonText(lightWantedTree(facts));
    else
        printLightWanted(context.console, facts);
    return ExitCode::success;
}

}  // namespace

Command lightWantedCommand() {
    CommandSpec spec;
    spec.name = "light-wanted";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say what looks and readings teach about the light that brings colours back");
    spec.details =
        "Each look at an extender-rich print says that its colour had returned by then, or not "
        "yet: bounds for the dose of light at which it does. From all of them, and the house rules "
        "while they are few, the share of prints that is back after a dose is fitted: for all inks "
        "and, where there are enough looks, by base, drier and share of base. The readiness check "
        "and the forecast use it. Readings of one print over time show how its colour nears the "
        "last one.";
    spec.options = {flagOption("why", "Give the house rules too."),
                    valueOption("on", "DATE", "Up to the end of this day.", "today at the studio")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook light-wanted --on 2026-03-20", "What was learnt by then."}};
    return {spec, run};
}

}  // namespace rackbook
