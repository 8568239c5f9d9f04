#include "commands/LightHad.h"

#include <algorithm>

#include "base/Error.h"
#include "calc/Stays.h"
#include "cli/Console.h"
#include "commands/BookAccess.h"
#include "commands/LightOfStudio.h"
#include "commands/LightReport.h"
#include "commands/OptionRows.h"
#include "commands/PlaceGiven.h"
#include "commands/SheetSelection.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// Every pull that came to the impression by then, in the order of time.
std::vector<LayerLight> layersOf(const LightFacts& facts, DoseLedger& ledger, int impression,
                                 const std::vector<Stay>& stays) {
    const auto at = static_cast<std::size_t>(impression);
    std::vector<LayerLight> layers;
    const std::uint32_t* end = facts.history.pullsOf.end(at);
    for (const std::uint32_t* row = facts.history.pullsOf.begin(at); row != end; ++row) {
        const HistoryPull& pull = facts.history.pulls[*row];
        if (pull.start.earliest <= facts.readiness.asOf && pull.layer >= 0)
            layers.push_back(
                {pull.layer, pull.start, ledger.sumSince(stays, pull.start, facts.readiness.asOf)});
    }
    std::stable_sort(layers.begin(), layers.end(), [](const LayerLight& a, const LayerLight& b) {
        return a.pulled.earliest < b.pulled.earliest;
    });
    return layers;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    requireStudioPlace(studio);
    const HistoryFilter filter = filterNamed(book, context.arguments.text("sheets"));
    const CivilMinute asOf = asOfDay(context, studio);
    LitHistory lit = litHistoryOf(book, studio, rules, filter, asOf);
    const History& history = lit.history;
    StudioLight& light = lit.light;
    const std::vector<ImpressionLabel> labels = labelsOf(book, history);
    const Readiness readiness = readinessOf(history, rules, asOf, light.model());
    LightFacts facts{
        history, labels, rules, readiness, light.ledger(), context.arguments.has("why"), {}, {}};
    Progress progress(context.console, "Light", readiness.rows.size());
    std::vector<Stay> stays;
    for (std::size_t i = 0; i < readiness.rows.size(); ++i) {
        const ReadinessRow& row = readiness.rows[i];
        staysOf(history, static_cast<std::size_t>(row.impression), asOf, stays);
        LightHad had{i, {}, layersOf(facts, light.ledger(), row.impression, stays)};
        if (row.pull >= 0)
            had.dose = light.ledger().since(stays, row.pulled, asOf);
        (row.pull >= 0 ? facts.impressions : facts.notAffected).push_back(std::move(had));
        progress.advance();
    }
    progress.finish();
    if (context.arguments.has("json"))
        context.console.out() << jsonText(lightTree(facts));
    else
        printLight(context.console, facts);
    return ExitCode::success;
}

}  // namespace

Command lightCommand() {
    CommandSpec spec;
    spec.name = "light";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary",
        "Estimate the light that impressions have had since their last extender-rich layer");
    spec.details =
        "Near ultraviolet on the face of the print, stay by stay since that layer was pulled: "
        "from the sun's course over the studio, the skies that were noted or else are usual, and "
        "what is recorded of each place: out of doors, daylight with a window's facing, its "
        "glass and a daylight factor, lamps, dark; what was metered there goes before the "
        "estimate. Interleaved and dark time counts as nothing. Every figure is an estimate with "
        "its bounds. Where the last look found the colour true, after its days in light or after "
        "it had turned, that is told instead of a chance.\n\n"
        "SHEETS is an edition's code, a code with working numbers such as TIDE:1-12,15, or ids of "
        "impressions with commas between. Of one impression, every stay and every layer is shown.";
    spec.positionals = {{"sheets", "Which impressions."}};
    spec.options = {flagOption("why", "Give the house rules too."),
                    valueOption("on", "DATE", "Up to the end of this day.", "today at the studio")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook light EEL --on 2026-03-20", "All that is kept of an edition."},
                     {"rackbook light EEL:26 --on 2026-03-20", "One print, stay by stay."}};
    return {spec, run};
}

}  // namespace rackbook
