#include "commands/Characterise.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/ColourModel.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {"surfaceOuterReflection", "surfaceInnerReflection"};

// A fit this far off is no noise: a unit, a film weight or a name is wrong (our guess, no source).
constexpr double disagreeing_dE00 = 3;

std::string dE00Words(double value) {
    return formatFixed(value, 2);
}

std::string sourceWords(const LotOptics& lot) {
    switch (lot.source) {
        case OpticsSource::fitted:
            if (lot.fit.mean_dE00 > disagreeing_dE00)
                return "its drawdowns disagree: look at each";
            if (!lot.isScatteringSeen)
                return "how it scatters is not seen: read it over black";
            return lot.leftOut ? "" : "nothing left to check it with";
        case OpticsSource::oneReading:
            return "one reading: how it scatters is assumed";
        case OpticsSource::takenAsClear:
            break;
    }
    return "never measured: taken as clear";
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const ColourModel& model)
        : m_console(console), m_ink(ink), m_model(model) {}

    void printAll() {
        if (m_model.samples.empty()) {
            printWrapped(m_console,
                         "No lot is known by its drawdowns yet. Draw inks down at full strength "
                         "and let down, measure them and the bare paper, and record the spectra: "
                         "rackbook enter drawdown, rackbook take-readings.");
            unusedTable();
            return;
        }
        lotsTable();
        say("Fit: ΔE00 under D50 between the drawdowns and what K and S give for them. Left out: "
            "each drawdown predicted from the others, on average and at most; this is how far "
            "predictions of the ink may be trusted.");
        mixesTable();
        unusedTable();
        early();
        say("Taken for granted: film weights as recorded; the ink the same all through; K and S of "
            "a mix the sums of those of its parts, by mass; the surface the same on ink and "
            "paper.");
        printHouseRules(m_console, m_ink.rules, rulesUsed);
    }

    void printOne(const LotOptics& lot) {
        m_console.out() << m_console.emphasis(printable(lotWords(lotAt(m_ink, lot.lot)))) << "\n";
        if (const std::string words = sourceWords(lot); !words.empty())
            say("Of it: " + words + ".");
        drawdownsTable(lot);
        m_console.out() << "\n";
        Table table({{"nm", Align::right}, {"K m²/g", Align::decimal}, {"S m²/g", Align::decimal}});
        for (std::size_t band = 0; band < bandCount; ++band)
            table.addRow({formatFixed(wavelengthOf_nm(band), 0),
                          formatFixed(lot.optics.absorption_m2g[band], 5),
                          formatFixed(lot.optics.scattering_m2g[band], 5)});
        m_console.out() << table.text(m_console.width(), "");
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    void lotsTable() {
        Table table({{"lot"},
                     {"drawdowns", Align::right},
                     {"readings", Align::right},
                     {"fit", Align::decimal},
                     {"left out", Align::decimal},
                     {"at most", Align::decimal},
                     {"note"}});
        for (const LotOptics& lot : m_model.inks.lots) {
            const bool isMeasured = lot.source != OpticsSource::takenAsClear;
            table.addRow({lotAt(m_ink, lot.lot).id, std::to_string(lot.samples.size()),
                          std::to_string(lot.readings),
                          isMeasured ? dE00Words(lot.fit.mean_dE00) : "",
                          lot.leftOut ? dE00Words(lot.leftOut->mean_dE00) : "",
                          lot.leftOut ? dE00Words(lot.leftOut->most_dE00) : "", sourceWords(lot)});
        }
        m_console.out() << table.text(m_console.width(), "");
    }

    void mixesTable() {
        if (m_model.inks.mixes.empty())
            return;
        m_console.out() << "\n" << m_console.emphasis("Drawdowns of several inks") << "\n";
        Table table({{"drawdown"}, {"predicted, off by ΔE00", Align::decimal}});
        for (const MixCheck& mix : m_model.inks.mixes)
            table.addRow({m_model.samples[mix.sample].drawdown, dE00Words(mix.check.mean_dE00)});
        m_console.out() << table.text(m_console.width(), "");
        say("None of the inks was fitted to them.");
    }

    void unusedTable() {
        if (m_model.unused.empty())
            return;
        m_console.out() << "\n" << m_console.emphasis("Readings that teach nothing") << "\n";
        Table table({{"reading"}, {"of drawdown"}, {"why"}});
        for (const UnusedReading& one : m_model.unused)
            table.addRow({one.reading, one.drawdown, one.why});
        m_console.out() << table.text(m_console.width(), "");
    }

    void early() {
        if (!m_model.readEarly.empty())
            say("Read before their days in light were over, and perhaps still brown: " +
                joined(m_model.readEarly) + ".");
    }

    static std::string leftOutWords(const LotOptics& lot, std::size_t sample) {
        for (const LeftOutDrawdown& one : lot.leftOutOf)
            if (one.sample == sample)
                return dE00Words(one.mean_dE00);
        return "";
    }

    void drawdownsTable(const LotOptics& lot) {
        Table table({{"drawdown"},
                     {"% of the lot", Align::decimal},
                     {"g/m²", Align::decimal},
                     {"readings", Align::right},
                     {"left out", Align::decimal}});
        for (const std::size_t at : lot.samples) {
            const DrawdownSample& sample = m_model.samples[at];
            table.addRow({sample.drawdown, formatFixed(shareOf(sample.shares, lot.lot) * 100, 2),
                          formatShortest(sample.filmWeight_gm2), std::to_string(sample.over.size()),
                          leftOutWords(lot, at)});
        }
        m_console.out() << "\n" << table.text(m_console.width(), "It has no drawdowns.");
        if (const std::optional<double> error = lot.relativeError())
            say("Left out: ΔE00 of each drawdown predicted from the others. Of what the ink does "
                "to "
                "a colour, that is " +
                formatFixed(100 * *error, 1) + " %, root mean square.");
    }

    Console& m_console;
    const InkBook& m_ink;
    const ColourModel& m_model;
};

Tree treeOf(const std::optional<PredictionCheck>& check) {
    if (!check)
        return {};
    Tree tree = Tree::object();
    tree.set("readings", check->readings);
    tree.set("mean_dE00", check->mean_dE00).set("most_dE00", check->most_dE00);
    return tree;
}

Tree treeOf(const LotOptics& lot, const InkBook& ink, const ColourModel& model) {
    static constexpr const char* sources[] = {"fitted", "oneReading", "takenAsClear"};
    Tree tree = Tree::object();
    tree.set("lot", lotAt(ink, lot.lot).id);
    tree.set("source", sources[static_cast<std::size_t>(lot.source)]);
    Tree drawdowns = Tree::array();
    for (const std::size_t sample : lot.samples)
        drawdowns.add(model.samples[sample].drawdown);
    tree.set("drawdowns", std::move(drawdowns)).set("readings", lot.readings);
    tree.set("fit", lot.samples.empty() ? Tree() : treeOf(std::optional(lot.fit)));
    tree.set("leftOut", treeOf(lot.leftOut)).set("scatteringSeen", lot.isScatteringSeen);
    tree.set("relativeError", lot.relativeError() ? Tree(*lot.relativeError()) : Tree());
    Tree leftOutOf = Tree::array();
    for (const LeftOutDrawdown& one : lot.leftOutOf)
        leftOutOf.add(Tree::object()
                          .set("drawdown", model.samples[one.sample].drawdown)
                          .set("mean_dE00", one.mean_dE00)
                          .set("error_dE00", one.error_dE00)
                          .set("effect_dE00", one.effect_dE00));
    tree.set("leftOutDrawdowns", std::move(leftOutOf));
    Tree absorption = Tree::array();
    Tree scattering = Tree::array();
    for (std::size_t band = 0; band < bandCount; ++band) {
        absorption.add(lot.optics.absorption_m2g[band]);
        scattering.add(lot.optics.scattering_m2g[band]);
    }
    tree.set("absorption_m2g", std::move(absorption));
    tree.set("scattering_m2g", std::move(scattering));
    return tree;
}

void addModel(Tree& report, const InkBook& ink, const ColourModel& model, int only) {
    report.set("start_nm", bandStart_nm).set("step_nm", bandStep_nm);
    Tree lots = Tree::array();
    for (const LotOptics& lot : model.inks.lots)
        if (only < 0 || lot.lot == only)
            lots.add(treeOf(lot, ink, model));
    report.set("lots", std::move(lots));
    Tree mixes = Tree::array();
    for (const MixCheck& mix : model.inks.mixes)
        mixes.add(Tree::object()
                      .set("drawdown", model.samples[mix.sample].drawdown)
                      .set("check", treeOf(std::optional(mix.check)))
                      .set("effect_dE00", mix.effect_dE00));
    report.set("mixRelativeError",
               model.inks.mixRelativeError ? Tree(*model.inks.mixRelativeError) : Tree());
    report.set("mixes", std::move(mixes));
    Tree unused = Tree::array();
    for (const UnusedReading& one : model.unused)
        unused.add(Tree::object()
                       .set("reading", one.reading)
                       .set("drawdown", one.drawdown)
                       .set("why", one.why));
    report.set("unusedReadings", std::move(unused));
    report.set("readEarly", textsTree(model.readEarly));
    report.set("houseRules", treeOf(ink.rules, rulesUsed));
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    int only = -1;
    if (const std::optional<std::string> lot = context.arguments.value("lot"))
        only = ink.records.indexOf<Lot>(recordNamed<Lot>(book, *lot).id);
    const ColourModel model = colourModelOf(ink);
    if (only >= 0 && !model.inks.of(only))
        throw InputError("lot " + lotAt(ink, only).id, "no drawdown tells what it does to light",
                         "Make drawdowns of it, full strength and let down, and measure them over "
                         "a paper that was measured too.");
    if (context.arguments.has("json")) {
        Tree report = newReport("characterise");
        addModel(report, ink, model, only);
        context.console.out() << jsonText(report);
        return ExitCode::success;
    }
    Report report(context.console, ink, model);
    if (only < 0) {
        report.printAll();
        return ExitCode::success;
    }
    report.printOne(*model.inks.of(only));
    return ExitCode::success;
}

}  // namespace

Command characteriseCommand() {
    CommandSpec spec;
    spec.name = "characterise";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say what the drawdowns teach about each lot, and how far that can be trusted");
    spec.details =
        "From the spectra of drawdowns, full strength and let down, and of the papers below them: "
        "how much a gram of each lot on a square metre absorbs (K) and scatters (S) at every "
        "wavelength, by the film theory of Kubelka and Munk with Saunderson's correction for the "
        "surface. Base, driers and modifiers are characterised as inks are; one that was never "
        "measured is taken as clear, and the table says so. Two readings of a lot, over two "
        "backings or of two strengths, fix K and S; where two are left without a drawdown, that "
        "can "
        "be predicted from them, which shows how good it is. How an ink scatters shows over black "
        "only, or in films that hide. A paper's reading belongs to a drawdown where "
        "its words are those of the drawdown's substrate; where it has one over white and one "
        "over black, the reading with the same backing counts.\n\nWith LOT: its K and S.";
    spec.positionals = {{"lot", "Id of one lot.", false}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook characterise", "All lots that were measured."},
                     {"rackbook characterise field-rose-1", "K and S of one."}};
    return {spec, run};
}

}  // namespace rackbook
