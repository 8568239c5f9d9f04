#include "commands/LightHad.h"

#include "base/Error.h"
#include "calc/Stays.h"
#include "cli/Console.h"
#include "commands/BookAccess.h"
#include "commands/LightReport.h"
#include "commands/OptionRows.h"
#include "commands/SheetSelection.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

GeoPoint studioPoint(const Book& studio) {
    if (!studio.latitude_deg || !studio.longitude_deg)
        throw UsageError("it is not recorded where the studio lies",
                         "Record it: rackbook enter book " + studio.id +
                             " latitude_deg=56 longitude_deg=10 --reason \"added\".");
    return {*studio.latitude_deg, *studio.longitude_deg};
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    PlaceUltraviolet ultraviolet(studioPoint(studio),
                                 {rules.value("skySunnyShare"), rules.value("skyOvercastShare")});
    const History history = historyIn(book, filterNamed(book, context.arguments.text("sheets")));
    const std::vector<ImpressionLabel> labels = labelsOf(book, history);
    const Readiness readiness = readinessOf(history, rules, asOfDay(context, studio));
    const std::vector<std::vector<LightPeriod>> periods = lightPeriodsOf(allOf<Place>(book));
    DoseLedger ledger(ultraviolet, periods);
    LightFacts facts{history, labels, rules, readiness, {}, {}, ultraviolet.sunnyDay_Whm2()};
    Progress progress(context.console, "Light", readiness.rows.size());
    std::vector<Stay> stays;
    for (std::size_t i = 0; i < readiness.rows.size(); ++i) {
        const ReadinessRow& row = readiness.rows[i];
        if (row.pull < 0) {
            facts.notAffected.push_back(i);
            continue;
        }
        staysOf(history, static_cast<std::size_t>(row.impression), readiness.asOf, stays);
        facts.impressions.push_back({i, ledger.since(stays, row.pulled, readiness.asOf)});
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
    spec.group = "Questions";
    spec.summary =
        "Estimate the light that impressions have had since their last extender-rich layer";
    spec.details =
        "Near ultraviolet on the face of the print, stay by stay since that layer was pulled: from "
        "the sun's course over the studio, how often skies are sunny or overcast (house rules), "
        "and "
        "what is recorded of each place: out of doors, daylight with a window's facing and a "
        "daylight factor, lamps, a metered level, dark. Interleaved and dark time counts as "
        "nothing. Every figure is an estimate with its bounds; the readiness check does not use "
        "it, but counts days and looks.\n\n"
        "SHEETS is an edition's code, a code with working numbers such as TIDE:1-12,15, or ids of "
        "impressions with commas between. Of one impression, every stay is shown.";
    spec.positionals = {{"sheets", "Which impressions."}};
    spec.options = {valueOption("on", "DATE", "Up to the end of this day.", "today at the studio")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook light EEL --on 2026-03-20", "All that is kept of an edition."},
                     {"rackbook light EEL:26 --on 2026-03-20", "One print, stay by stay."}};
    return {spec, run};
}

}  // namespace rackbook
