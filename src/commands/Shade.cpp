#include "commands/Shade.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
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
// Of the batch's mass: an addition so large was cut short.
constexpr double almostAll = 0.98;

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

// Drier makes no colour and starts the clock; it is put in last, into the portion.
void requireAddable(const InkBook& ink, int lot, const LotOnShelf& onShelf, CivilMinute asOf) {
    const LotKind kind = lotAt(ink, lot).lotKind;
    if (kind == LotKind::drier || kind == LotKind::modifier)
        throw UsageError("--with names " + lotAt(ink, lot).id + ", which is " + textOf(kind),
                         "A colour is shaded with inks and base.");
    if (const std::string why = whyNotOnShelf(onShelf, asOf); !why.empty())
        throw UsageError("--with names " + lotAt(ink, lot).id + ": " + why,
                         "Name lots that are there.");
}

// What may go in: named lots, else every measured ink on the shelf, and the base of which most is
// left.
std::vector<int> additionsGiven(const CommandContext& context, const BookFile& book,
                                const InkBook& ink, const ColourModel& model,
                                const std::vector<LotOnShelf>& shelf, CivilMinute asOf) {
    std::vector<int> lots;
    for (const std::string& id : context.arguments.values("with")) {
        lots.push_back(ink.records.indexOf<Lot>(recordNamed<Lot>(book, id).id));
        requireAddable(ink, lots.back(), shelf[static_cast<std::size_t>(lots.back())], asOf);
    }
    std::sort(lots.begin(), lots.end());
    lots.erase(std::unique(lots.begin(), lots.end()), lots.end());
    if (!lots.empty())
        return lots;
    const int base = usualBase(ink, model, shelf, {}, asOf);
    for (const LotOptics& known : model.inks.lots) {
        const LotKind kind = lotAt(ink, known.lot).lotKind;
        const bool mayGoIn = kind == LotKind::ink || known.lot == base;
        if (mayGoIn && whyNotOnShelf(shelf[static_cast<std::size_t>(known.lot)], asOf).empty())
            lots.push_back(known.lot);
    }
    return lots;
}

std::vector<int> lotsOf(const Shaded& way) {
    std::vector<int> lots;
    for (const Addition& addition : way.additions)
        lots.push_back(addition.lot);
    return lots;
}

// Each mass to the nearest that the balance shows; ways that come no nearer so are dropped.
std::vector<Shaded> asWeighed(const ShadingQuestion& question, const std::vector<Shaded>& found,
                              const BalanceFigures& balance, double before_dE00) {
    std::vector<Shaded> ways;
    for (const Shaded& way : found) {
        std::vector<Addition> additions;
        for (const Addition& addition : way.additions) {
            const double mass_g = roundedToReadability_g(addition.mass_g, balance);
            if (mass_g > 0)
                additions.push_back({addition.lot, mass_g});
        }
        if (additions.empty())
            continue;
        Shaded weighed = shadedWith(question, additions);
        if (weighed.miss.underD50_dE00 < before_dE00)
            ways.push_back(std::move(weighed));
    }
    std::stable_sort(ways.begin(), ways.end(), [](const Shaded& a, const Shaded& b) {
        return a.miss.underD50_dE00 < b.miss.underD50_dE00;
    });
    // Rounding may leave two ways with the same lots: the nearer one stays.
    std::vector<Shaded> once;
    for (Shaded& way : ways)
        if (std::none_of(once.begin(), once.end(),
                         [&](const Shaded& other) { return lotsOf(other) == lotsOf(way); }))
            once.push_back(std::move(way));
    return once;
}

void addStockWarnings(Shade& shade, const InkBook& ink, const std::vector<LotOnShelf>& shelf) {
    const std::vector<Shaded>& ways = shade.shown();
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const std::string way = "Way " + std::to_string(i + 1);
        for (const Addition& lot : shortagesOf(shelf, ways[i].additions))
            shade.warnings.push_back(way + " takes more of " + lotAt(ink, lot.lot).id +
                                     " than the book says is left.");
        for (const Addition& addition : ways[i].additions)
            if (addition.mass_g > almostAll * shade.mass_g)
                shade.warnings.push_back(way + " would take still more of " +
                                         lotAt(ink, addition.lot).id +
                                         ": no more than the batch itself is proposed.");
    }
}

void warn(Shade& shade, const CommandContext& context, const InkBook& ink, const Reading& test,
          const Drawdown& drawdown, const std::vector<LotOnShelf>& shelf) {
    shade.warnings = shade.aim.warnings;
    if (!readEarlyWords(ink, test).empty())
        shade.warnings.push_back(
            "The test was read before its days in light were over: ink that is rich in base turns "
            "while it cures. Where it is brown still, what is added now will be too little or too "
            "much.");
    if (const Reading* aim = ink.records.find<Reading>(shade.aim.reading))
        if (const std::vector<std::string> unlike = unlikeConditions(*aim, test); !unlike.empty())
            shade.warnings.push_back("The two were not measured alike: " + joined(unlike) + ".");
    if (const auto& paper = shade.aim.paper.paper;
        !shade.aim.reading.empty() && paper && *paper != shade.paper.words)
        shade.warnings.push_back("The colour to be was read over another paper (" + *paper + ").");
    if (shade.aim.filmWeight_gm2 && std::abs(*shade.aim.filmWeight_gm2 / shade.filmWeight_gm2 - 1) >
                                        shade.filmUncertainty_share)
        shade.warnings.push_back("The colour to be was drawn at " +
                                 formatFixed(*shade.aim.filmWeight_gm2, 1) + " g/m², the test at " +
                                 formatFixed(shade.filmWeight_gm2, 1) +
                                 ": ink is proposed for what the film lacks or has too much.");
    if (!shade.paper.warning.empty())
        shade.warnings.push_back(shade.paper.warning);
    if (drawdown.substrate != shade.paper.words)
        shade.warnings.push_back("The record says that the test lies on " + drawdown.substrate +
                                 "; what was given is used.");
    if (!drawdown.filmWeight_gm2 && !context.arguments.has("film"))
        shade.warnings.push_back(
            "At what film weight the test was drawn is not recorded; the "
            "studio's is taken. Give --film if it is known.");
    if (!shade.balance)
        shade.warnings.push_back("Masses are as computed; with --balance, as it can show them.");
    if (drawdown.filmWeight_gm2 && context.arguments.has("film"))
        shade.warnings.push_back("The record says that the test was drawn at " +
                                 formatFixed(*drawdown.filmWeight_gm2, 1) +
                                 " g/m²; what was given is used.");
    addStockWarnings(shade, ink, shelf);
    if (!shade.found.empty() && shade.weighed.empty() && shade.balance)
        shade.warnings.push_back(
            "The balance cannot show so little: the masses below are as computed. Let the colour "
            "down in base first, or mix more.");
}

// The standard uncertainty of what the additions change: each may be off by what its lot is known
// to, and by what the balance is.
double spreadOf(const ShadingQuestion& question, const Shaded& way,
                const std::vector<LotKind>& kinds, const std::optional<BalanceGiven>& balance) {
    double sum = 0;
    for (std::size_t i = 0; i < way.additions.size(); ++i) {
        const Addition& addition = way.additions[i];
        // Base thins out; what little it does to light by itself counts for nothing here.
        const bool isInk = kinds[static_cast<std::size_t>(addition.lot)] == LotKind::ink;
        const double ink =
            isInk ? assumedRelativeError(question.inks, addition.lot, kinds).value_or(0) : 0;
        const double weighed = balance ? massUncertainty_g(balance->figures) / addition.mass_g : 0;
        std::vector<Addition> moved = way.additions;
        moved[i].mass_g *= 1 + std::hypot(ink, weighed);
        const double off = deltaE00(way.expected_D50, shadedWith(question, moved).expected_D50);
        sum += off * off;
    }
    return std::sqrt(sum);
}

std::size_t balancesInUse(const InkBook& ink) {
    const std::vector<Balance>& balances = ink.records.of<Balance>();
    return static_cast<std::size_t>(
        std::count_if(balances.begin(), balances.end(),
                      [](const Balance& balance) { return !balance.retiredOn; }));
}

// What was weighed in after the test makes another batch of it.
void requireAsTested(const InkBook& ink, const Reading& test, const Drawdown& drawdown,
                     CivilMinute asOf) {
    if (changedSince(ink, test, asOf))
        throw UsageError(
            "mix " + drawdown.mix->id + " was added to after drawdown " + drawdown.id + " was made",
            "Draw it down again and measure that.");
}

Shade shadeFor(const CommandContext& context, const BookFile& book, const InkBook& ink,
               const ColourModel& model) {
    Shade shade;
    const CivilMinute asOf = asOfDay(context, ink.studio);
    const Reading test = recordNamed<Reading>(book, context.arguments.text("test"));
    const Drawdown& drawdown = testDrawdown(ink, test);
    requireAsTested(ink, test, drawdown, asOf);
    shade.testReading = test.id;
    shade.aim = colourAimNamed({book, ink, model}, context.arguments.text("what"),
                               context.arguments.value("layer"), asOf);
    shade.mix = ink.records.indexOf<Mix>(drawdown.mix->id);
    shade.mass_g = massOf(context, ink, shade.mix, asOf);
    shade.paper = paperGiven(context, ink, {drawdown.substrate, test.backing});
    const FilmGiven film = filmGiven(context, ink, drawdown.filmWeight_gm2, shade.aim.layer);
    shade.filmWeight_gm2 = film.least_gm2;
    shade.filmUncertainty_share = film.uncertainty_share;
    shade.filmWords = film.words;
    shade.test = colourRead(test, model.inks.surface, "Measure it again.");
    shade.target = targetOver(model, shade.aim, shade.paper, shade.filmWeight_gm2);
    shade.before_dE00 = deltaE00(shade.target.lab_D50, shade.test.lab_D50);
    const std::vector<LotOnShelf> shelf = shelfOf(ink, asOf);
    ShadingQuestion question{
        model.inks,        sharesOfDrawdown(ink, drawdown),
        shade.mass_g,      shade.filmWeight_gm2,
        shade.paper.bands, shade.test,
        shade.target,      additionsGiven(context, book, ink, model, shelf, asOf)};
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
    if (context.arguments.has("balance") || balancesInUse(ink) == 1)
        shade.balance = balanceGiven(context, ink.records);
    if (shade.balance)
        shade.weighed = asWeighed(question, shade.found, shade.balance->figures, shade.before_dE00);
    for (const Shaded& way : shade.shown())
        shade.spread_dE00.push_back(spreadOf(question, way, lotKindsOf(ink), shade.balance));
    warn(shade, context, ink, test, drawdown, shelf);
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
    spec.group = toTranslate("group", "Questions");
    spec.summary =
        toTranslate("summary", "Say what to add to a batch whose test drawdown was measured");
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
