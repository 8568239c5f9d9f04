#include "commands/Drawers.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Error.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/DrawersReport.h"
#include "commands/LightOfStudio.h"
#include "commands/OptionRows.h"
#include "commands/PlaceGiven.h"
#include "commands/PrintsWanted.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::vector<std::optional<int>> capacitiesOf(const BookFile& book, const History& history) {
    std::map<std::string, std::optional<int>> byId;
    for (const Place& place : allOf<Place>(book))
        byId[place.id] = place.capacity;
    std::vector<std::optional<int>> capacities;
    for (const HistoryPlace& place : history.places)
        capacities.push_back(byId[place.id]);
    return capacities;
}

// The prints that are wanted, and the drawers that hold any of them.
void keepOnly(DrawersPlan& plan, const std::vector<bool>& isWanted) {
    const auto erase = [](auto& items, auto isOut) {
        items.erase(std::remove_if(items.begin(), items.end(), isOut), items.end());
    };
    for (DrawerContents& drawer : plan.drawers) {
        erase(drawer.prints,
              [&](const LyingPrint& print) { return print.isSpoiled || !isWanted[print.row]; });
        std::set<int> left;
        for (const LyingPrint& print : drawer.prints)
            left.insert(print.impression);
        for (PutAwaySoft& soft : drawer.soft)
            erase(soft.impressions, [&](int one) { return left.count(one) == 0; });
        erase(drawer.soft, [](const PutAwaySoft& soft) { return soft.impressions.empty(); });
    }
    erase(plan.drawers, [](const DrawerContents& drawer) { return drawer.prints.empty(); });
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    const History history = judgedHistoryIn(book, {}, rules);
    const std::optional<std::string> place = context.arguments.value("place");
    const int within = place ? placePosition(history, *place) : -1;
    const std::vector<ImpressionLabel> labels = labelsOf(book, history);
    const CivilMinute asOf = asOfDay(context, studio);
    const StudioLight light = learntLightOf(book, studio, rules, history, asOf);
    const Readiness readiness = readinessOf(history, rules, asOf, light.model());
    DrawersPlan plan =
        drawersPlanOf(history, readiness, rules, capacitiesOf(book, history), within);
    if (hasPrintFilters(context))
        keepOnly(plan, printsWanted(context, book, history, labels, readiness));
    if (place && plan.drawers.empty() && !hasPrintFilters(context))
        throw UsageError("at " + excerpt(*place) +
                             " there is no drawer, no box and no print in a dark place, in the "
                             "studio's hands",
                         "rackbook drawers lists those there are; rackbook ready --place " +
                             excerpt(*place) + " judges what is there.");
    const DrawersFacts facts{
        history, labels, rules, readiness, plan, place.has_value(), hasPrintFilters(context)};
    if (context.arguments.has("json"))
        context.console.out() << jsonText(drawersTree(facts));
    else
        printDrawers(context.console, facts);
    for (const DrawerContents& drawer : plan.drawers)
        if (drawer.atRisk() > 0)
            return ExitCode::findings;
    return ExitCode::success;
}

}  // namespace

Command drawersCommand() {
    CommandSpec spec;
    spec.name = "drawers";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say what lies in each drawer and box, and what of it is still at risk");
    spec.details =
        "For each drawer and box of the studio, and any other dark place that holds prints: how "
        "many lie there, which of them may still need light and since when they have been in the "
        "dark, the day on which they are to be aired (house rule airing_days; what is to be "
        "brought out by its verdict is due now), and what was put away without a look that found "
        "it dry, with what lay beside it. A box or drawer at a gallery or a holder's is left "
        "out. Spoiled sheets are counted among what lies there, and not judged. Exit code 1 "
        "where anything there may still need light: every verdict of rackbook ready but ready "
        "and not affected.\n\n"
        "With PLACE, only that drawer or those within it, impression by impression; that is what "
        "other verbs take as --place. With --edition, --holder or --verdict only those prints "
        "count, and spoiled sheets do not. --during does not apply: it is one day that is looked "
        "at, the one of --on.";
    spec.positionals = {{"place", "A drawer, a box, or what they are in.", false, false}};
    spec.options = printFilters();
    spec.options.push_back(
        valueOption("on", "DATE", "Judge as of the end of this day.", "today at the studio"));
    spec.reportsJson = true;
    spec.examples = {{"rackbook drawers --on 2026-03-20", "All of them."},
                     {"rackbook drawers --edition BRK --on 2026-03-20", "Where one edition lies."},
                     {"rackbook drawers drawer-3 --on 2026-03-20", "One, print by print."}};
    return {spec, run};
}

}  // namespace rackbook
