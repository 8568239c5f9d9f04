#include "commands/Shade.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/ReadingColour.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/JsonReport.h"
#include "commands/MassGiven.h"
#include "commands/MatchPlan.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/ShadeReport.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t waysShown = 3;

// The drawdown of a mix that a reading is of.
const Drawdown& testDrawdown(const InkBook& ink, const Reading& reading) {
    const Drawdown* drawdown = ink.records.find(reading.drawdown);
    if (!drawdown || !drawdown->mix)
        throw UsageError("reading " + reading.id + " is of no drawdown of a mix",
                         "Draw the batch down, record the drawdown with its mix, and measure it.");
    return *drawdown;
}

double massOf(const CommandContext& context, const InkBook& ink, int mix, CivilMinute asOf) {
    if (const std::optional<double> given = massOption(context, "shade", "mass"))
        return *given;
    const MixLedger ledger(ledgerByLot(ink.history, asOf));
    const Estimate left_g = leftInMix(ink, ledger, static_cast<std::size_t>(mix), asOf);
    if (!left_g.isKnown() || !(left_g.best > 0))
        throw UsageError("how much of mix " + mixAt(ink, mix).id + " is in hand is not known",
                         "Give --mass.");
    return left_g.best;
}

// What may go in: named lots, else the inks that are in it already, its base, and all other inks
// on the shelf that were measured.
std::vector<int> additionsGiven(const CommandContext& context, const BookFile& book,
                                const InkBook& ink, const ColourModel& model, CivilMinute asOf) {
    std::vector<int> lots;
    for (const std::string& id : context.arguments.values("with"))
        lots.push_back(ink.records.indexOf<Lot>(recordNamed<Lot>(book, id).id));
    if (!lots.empty()) {
        std::sort(lots.begin(), lots.end());
        lots.erase(std::unique(lots.begin(), lots.end()), lots.end());
        return lots;
    }
    const std::vector<LotOnShelf> shelf = shelfOf(ink, asOf);
    const int base = usualBase(ink, model, asOf);
    for (const LotOptics& known : model.inks.lots) {
        const LotKind kind = lotAt(ink, known.lot).lotKind;
        const bool mayGoIn = kind == LotKind::ink || known.lot == base;
        if (mayGoIn && whyNotOnShelf(shelf[static_cast<std::size_t>(known.lot)], asOf).empty())
            lots.push_back(known.lot);
    }
    return lots;
}

ColourTarget testColour(const Reading& reading, const ColourModel& model) {
    if (spectrumIn(reading))
        return targetOf(bandsIn(reading, model.inks.surface));
    const std::optional<ReadingColour> colour =
        colourOf(reading, ViewingLight::D50, Observer::deg2);
    if (!colour)
        throw InputError("reading " + reading.id, "it holds no colour under D50 and 2°",
                         "Measure it again.");
    return {colour->lab, std::nullopt};
}

// Each mass to the nearest that the balance shows; ways of which nothing would be left are dropped.
std::vector<Shaded> asWeighed(const ShadingQuestion& question, const std::vector<Shaded>& found,
                              const BalanceFigures& balance) {
    std::vector<Shaded> ways;
    for (const Shaded& way : found) {
        std::vector<Addition> additions;
        for (const Addition& addition : way.additions) {
            const double mass_g = roundedToReadability_g(addition.mass_g, balance);
            if (mass_g > 0)
                additions.push_back({addition.lot, mass_g});
        }
        if (!additions.empty())
            ways.push_back(shadedWith(question, additions));
    }
    return ways;
}

void warn(Shade& shade, const InkBook& ink, const Reading& test) {
    shade.warnings = shade.aim.warnings;
    if (!readEarlyWords(ink, test).empty())
        shade.warnings.push_back(
            "The test was read before its days in light were over: ink that is rich in base turns "
            "while it cures. Where it is brown still, what is added now will be too little or too "
            "much.");
    if (const Reading* aim = ink.records.find<Reading>(shade.aim.reading))
        if (const std::vector<std::string> unlike = unlikeConditions(*aim, test); !unlike.empty())
            shade.warnings.push_back("The two were not measured alike: " + joined(unlike) + ".");
    if (shade.aim.paper && *shade.aim.paper != shade.paper.words)
        shade.warnings.push_back("The colour to be was read over another paper (" +
                                 *shade.aim.paper + ").");
    if (!shade.found.empty() && shade.weighed.empty() && shade.balance)
        shade.warnings.push_back(
            "The balance cannot show so little: the masses below are as computed. Let the colour "
            "down in base first, or mix more.");
}

Shade shadeFor(const CommandContext& context, const BookFile& book, const InkBook& ink,
               const ColourModel& model) {
    Shade shade;
    const CivilMinute asOf = asOfDay(context, ink.studio);
    const Reading test = recordNamed<Reading>(book, context.arguments.text("test"));
    const Drawdown& drawdown = testDrawdown(ink, test);
    shade.testReading = test.id;
    shade.aim = colourAimNamed({book, ink, model}, context.arguments.text("what"),
                               context.arguments.value("layer"), asOf);
    shade.mix = ink.records.indexOf<Mix>(drawdown.mix->id);
    shade.mass_g = massOf(context, ink, shade.mix, asOf);
    shade.paper = paperGiven(context, ink, drawdown.substrate);
    const FilmGiven film = filmGiven(context, ink, drawdown.filmWeight_gm2, shade.aim.layer);
    shade.filmWeight_gm2 = film.least_gm2;
    shade.filmUncertainty_share = film.uncertainty_share;
    shade.test = testColour(test, model);
    shade.target = targetOver(model, shade.aim, shade.paper, shade.filmWeight_gm2);
    shade.before_dE00 = deltaE00(shade.target.lab_D50, shade.test.lab_D50);
    ShadingQuestion question{model.inks,        sharesOfMix(ink, shade.mix, asOf),
                             shade.mass_g,      shade.filmWeight_gm2,
                             shade.paper.bands, shade.test,
                             shade.target,      additionsGiven(context, book, ink, model, asOf)};
    requireKnownInks(ink, model, question.shares, "mix " + mixAt(ink, shade.mix).id);
    for (const int lot : question.additions)
        requireKnownInks(ink, model, {{lot, 1}}, "shade");
    shade.filmWeight_dE00 = spreadOf({model.inks,
                                      question.shares,
                                      {},
                                      shade.filmWeight_gm2,
                                      shade.filmWeight_gm2 * film.uncertainty_share,
                                      shade.paper.bands},
                                     lotKindsOf(ink))
                                .filmWeight_dE00;
    shade.found = shadings(question, waysShown);
    shade.balance = balanceGiven(context, ink.records);
    if (shade.balance)
        shade.weighed = asWeighed(question, shade.found, shade.balance->figures);
    warn(shade, ink, test);
    return shade;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const ColourModel model = colourModelOf(ink);
    const Shade shade = shadeFor(context, book, ink, model);
    if (context.arguments.has("json")) {
        Tree report = newReport("shade");
        addShade(report, ink, shade);
        context.console.out() << jsonText(report);
    } else {
        printShade(context.console, ink, shade);
    }
    return shade.before_dE00 > ink.rules.value("colourTolerance_dE00") ? ExitCode::findings
                                                                       : ExitCode::success;
}

}  // namespace

Command shadeCommand() {
    CommandSpec spec;
    spec.name = "shade";
    spec.group = "Questions";
    spec.summary = "Say what to add to a batch whose test drawdown was measured";
    spec.details =
        "TEST is the reading of a drawdown of the batch; the mix, the paper and the film weight "
        "come from that drawdown. The additions that bring the batch nearest to the colour are "
        "computed from the drawdowns of the studio's inks, but from the colour that was measured, "
        "not from the one that was predicted. Up to two lots at once; what can only be added, "
        "never taken out. Compare a test only once its colour has returned. Exit code 1 where it "
        "is "
        "outside the studio's tolerance.";
    spec.positionals = {{"test", "Id of the reading of the test drawdown."}};
    for (PositionalSpec& positional : aimPositionals())
        spec.positionals.push_back(std::move(positional));
    spec.options = {paperOption(),
                    filmOption(),
                    valueOption("mass", "MASS", "How much of the batch is in hand.",
                                "what the book says is left of it"),
                    repeatable(valueOption("with", "LOT", "A lot that may go in.",
                                           "every measured ink on the shelf, and base")),
                    balanceOption(),
                    valueOption("on", "DATE", "With the lots that are there on this day.",
                                "today at the studio")};
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {{"rackbook shade ferry-again-d50 FER 1 --balance pocket-balance",
                      "What brings the batch to the old edition's first layer."}};
    return {spec, run};
}

}  // namespace rackbook
