#include "commands/Ready.h"

#include <algorithm>

#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/JudgedPrints.h"
#include "commands/OptionRows.h"
#include "commands/PlaceGiven.h"
#include "commands/ReadyReport.h"
#include "commands/SheetSelection.h"
#include "exchange/TreeJson.h"
#include "store/HistoryQuery.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::optional<HistoryFilter> filterOf(const CommandContext& context, const BookFile& book) {
    const std::optional<std::string> words = context.arguments.value("sheets");
    return words ? std::optional(filterNamed(book, *words)) : std::nullopt;
}

std::vector<std::size_t> chosenRows(const CommandContext& context, const History& history,
                                    const Readiness& readiness) {
    const std::optional<std::string> place = context.arguments.value("place");
    const std::optional<std::string> verdict = context.arguments.value("verdict");
    const int wanted = place ? placePosition(history, *place) : -1;
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0; i < readiness.rows.size(); ++i) {
        const ReadinessRow& row = readiness.rows[i];
        if (context.arguments.has("too-early") && !row.putAwayEarly)
            continue;
        if (verdict && textOf(row.verdict) != *verdict)
            continue;
        if (place && !liesWithin(history, row.place, wanted))
            continue;
        chosen.push_back(i);
    }
    std::stable_sort(chosen.begin(), chosen.end(), [&](std::size_t a, std::size_t b) {
        return urgencyOf(readiness.rows[a].verdict) < urgencyOf(readiness.rows[b].verdict);
    });
    return chosen;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    const std::optional<HistoryFilter> filter = filterOf(context, book);
    const JudgedPrints prints(book, studio, rules, filter, asOfDay(context, studio));
    const ReadyFacts facts{prints.history,
                           prints.labels,
                           rules,
                           prints.readiness,
                           chosenRows(context, prints.history, prints.readiness),
                           context.arguments.has("why")};
    if (context.arguments.has("json"))
        context.console.out() << jsonText(readinessTree(facts));
    else
        printReadiness(context.console, facts);
    const bool anyMayNeedLight =
        std::any_of(facts.chosen.begin(), facts.chosen.end(),
                    [&](std::size_t i) { return mayNeedLight(prints.readiness.rows[i].verdict); });
    return anyMayNeedLight ? ExitCode::findings : ExitCode::success;
}

}  // namespace

Command readyCommand() {
    CommandSpec spec;
    spec.name = "ready";
    spec.group = toTranslate("group", "Questions");
    spec.summary =
        toTranslate("summary", "Say which impressions may be put away and which still need light");
    spec.details =
        "For each impression: the last extender-rich layer, its days in light since, an estimate "
        "of that light, the looks recorded, and a verdict with its reasons. The estimate says when "
        "a look is worth making, and learns from looks; nothing is called ready without recorded "
        "looks. Exit code 1 where anything may still need light: every verdict but ready and not "
        "affected.\n\n"
        "SHEETS is an edition's code, a code with working numbers such as TIDE:1-12,15, or ids of "
        "impressions with commas between; without it, the whole book.";
    spec.positionals = {{"sheets", "Which impressions.", false, false}};
    spec.options = {
        {"place",
         "PLACE",
         "Only what is at this place, or at a place within it.",
         false,
         false,
         {},
         {}},
        choiceOption("verdict", "VERDICT", "Only what is judged so.", enumNames<Verdict>()),
        {"too-early", "", "Only what was put away before it was ready.", false, false, {}, {}},
        {"why",
         "",
         "Give all reasons, also of what is ready or not affected, and the house rules.",
         false,
         false,
         {},
         {}},
        {"on", "DATE", "Judge as of this day.", false, false, "today at the studio", {}}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook ready", "The whole book."},
                     {"rackbook ready --too-early", "What was put away too early."}};
    return {spec, run};
}

}  // namespace rackbook
