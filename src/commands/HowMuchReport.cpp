#include "commands/HowMuchReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "calc/PercentText.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

constexpr int gramDecimals = 2;

const Layer& layerAt(const InkBook& ink, int position) {
    return ink.records.of<Layer>()[static_cast<std::size_t>(position)];
}

std::string grams(double mass_g) {
    return std::isfinite(mass_g) ? formatFixed(mass_g, gramDecimals) : "not known";
}

const char* wordsOf(MixPurpose purpose) {
    switch (purpose) {
        case MixPurpose::stock:
            return "stock mix";
        case MixPurpose::letDown:
            return "let-down";
        case MixPurpose::portion:
            break;
    }
    return "portion";
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const HowMuch& much)
        : m_console(console), m_ink(ink), m_much(much) {}

    void print() {
        heading();
        if (m_much.layers.empty()) {
            say(m_much.leftOut.empty()
                    ? "No layer is planned yet: rackbook layer " + m_much.edition->code +
                          " 1 COLOUR plans one."
                    : "Every layer has been pulled already (" + formatRanges(m_much.leftOut) +
                          "). Name a layer to reckon it again, or give --all.");
            return;
        }
        printLayers();
        sayWhatWasLeftOut();
        sayWeights();
        sayCoverage();
        printMixes();
    }

private:
    void say(const std::string& text) { printParagraph(m_console, text); }

    bool anyFrom(WeightSource source) const {
        for (const LayerNeed& need : m_much.layers)
            if (need.film.from == source)
                return true;
        return false;
    }

    void heading() {
        const Edition& edition = *m_much.edition;
        m_console.out() << m_console.emphasis(
                               printable("Ink for " + edition.code + ", " + edition.title))
                        << "\n";
        const RuleInForce& rule = m_ink.rules.rule("spoilShare");
        std::string words =
            "Image " + formatShortest(*edition.imageHeight_mm) + " x " +
            formatShortest(*edition.imageWidth_mm) + " mm. " + std::to_string(m_much.sheets) +
            (m_much.sheets == 1 ? " sheet" : " sheets") + " (" + m_much.sheetsWords + "), and " +
            percentText(m_much.spoilShare) + " more for spoils (" +
            (m_much.spoilGiven ? "as given" : originWords(rule)) + ").";
        if (m_much.kept > 0 && m_much.kept != m_much.sheets)
            words += " In the book " + std::to_string(m_much.kept) +
                     (m_much.kept == 1 ? " sheet is kept" : " sheets are kept") +
                     "; --sheets reckons with another number.";
        say(words);
    }

    void printLayers() {
        Table table({{"layer", Align::right},
                     {"colour"},
                     {"inked %", Align::decimal},
                     {"g/m²", Align::right},
                     {"from"},
                     {"low g", Align::decimal},
                     {"best g", Align::decimal},
                     {"high g", Align::decimal}});
        for (const LayerNeed& need : m_much.layers) {
            const Layer& layer = layerAt(m_ink, need.layer);
            table.addRow({std::to_string(layer.ordinal), layer.colourWords,
                          formatFixed(need.coverage * 100, 0),
                          estimateWords(need.film.weight_gm2, 1), filmSourceWords(need.film),
                          grams(need.ink_g.low), grams(need.ink_g.best), grams(need.ink_g.high)});
        }
        if (m_much.layers.size() > 1)
            table.addRow({"", "in all", "", "", "", grams(m_much.total_g.low),
                          grams(m_much.total_g.best), grams(m_much.total_g.high)});
        m_console.out() << "\n" << table.text(m_console.width(), "");
    }

    void sayWhatWasLeftOut() {
        if (!m_much.leftOut.empty())
            say("Pulled already and left out: " +
                std::string(m_much.leftOut.size() == 1 ? "layer " : "layers ") +
                formatRanges(m_much.leftOut) + ". --all takes them in.");
    }

    void sayWeights() {
        if (anyFrom(WeightSource::layer) || anyFrom(WeightSource::edition) ||
            anyFrom(WeightSource::studio))
            say("Best is the median of the film weights of those pulls, low and high are their "
                "quartiles: half of the pulls lay between. It is the ink that left the slab, over "
                "the inked area, so what stays on the roller is in it.");
        if (anyFrom(WeightSource::commonPractice))
            say("3–15 g/m² is what hand relief printing takes, perhaps: common practice, no "
                "source. The book learns the studio's own from three pulls with the ink weighed "
                "before and after (rackbook pull --ink-before --ink-after).");
        if (anyFrom(WeightSource::aimed))
            say("Best is the film weight that the layer aims at; low and high are what was learnt "
                "or, where nothing was, what hand relief printing takes, perhaps (3–15 g/m²: "
                "common practice, no source).");
        if (anyFrom(WeightSource::given))
            say("The film weight is as given, without a spread.");
    }

    void sayCoverage() {
        std::vector<int> assumed;
        const Layer* first = nullptr;
        for (const LayerNeed& need : m_much.layers) {
            if (!need.coverageAssumed)
                continue;
            const Layer& layer = layerAt(m_ink, need.layer);
            assumed.push_back(layer.ordinal);
            first = first ? first : &layer;
        }
        if (first)
            say("How much of the image is inked is not recorded for " +
                std::string(assumed.size() == 1 ? "layer " : "layers ") + formatRanges(assumed) +
                ", so all of it is taken, which is the most it can be. Record it with rackbook "
                "enter layer " +
                first->id + " coverage=0.4 --reason \"estimated\".");
    }

    void printMixes() {
        std::vector<int> without;
        for (const LayerNeed& need : m_much.layers)
            if (need.mix < 0)
                without.push_back(layerAt(m_ink, need.layer).ordinal);
        if (!m_much.mixes.empty()) {
            m_console.out() << "\n" << m_console.emphasis("How much it takes of each mix") << "\n";
            Table table({{"mix"},
                         {"name"},
                         {"kind"},
                         {"layers", Align::right},
                         {"low g", Align::decimal},
                         {"best g", Align::decimal},
                         {"high g", Align::decimal},
                         {"there now g", Align::decimal}});
            for (const MixInNeed& mix : m_much.mixes)
                addMix(table, mix);
            m_console.out() << table.text(m_console.width(), "");
            if (hasEarlierMixes())
                say("A let-down and the stock mix in it both have a line. What is there now of a "
                    "let-down is not taken off its stock mix.");
            sayClosedMixes();
        }
        if (!without.empty())
            say(std::string(without.size() == 1 ? "Layer " : "Layers ") + formatRanges(without) +
                (without.size() == 1 ? " names" : " name") + " no mix, and of what " +
                (without.size() == 1 ? "it takes" : "they take") + " nothing is in the table.");
    }

    bool hasEarlierMixes() const {
        return std::any_of(m_much.mixes.begin(), m_much.mixes.end(), [&](const MixInNeed& mix) {
            return std::none_of(m_much.layers.begin(), m_much.layers.end(),
                                [&](const LayerNeed& layer) { return layer.mix == mix.need.mix; });
        });
    }

    void sayClosedMixes() {
        std::vector<std::string> ids;
        for (const int mix : m_much.closedMixes)
            ids.push_back(mixAt(m_ink, mix).id);
        if (!ids.empty())
            say("What " + joined(ids) + (ids.size() == 1 ? " is" : " are") +
                " made of cannot be computed from the weighings yet, so no mix in " +
                (ids.size() == 1 ? "it" : "them") + " has a line.");
    }

    void addMix(Table& table, const MixInNeed& mix) const {
        const Mix& record = mixAt(m_ink, mix.need.mix);
        const Estimate& mass = mix.need.mass_g;
        table.addRow({record.id, record.name, wordsOf(record.purpose),
                      std::to_string(mix.need.layers), grams(mass.low), grams(mass.best),
                      grams(mass.high), estimateWords(mix.there_g, gramDecimals)});
    }

    Console& m_console;
    const InkBook& m_ink;
    const HowMuch& m_much;
};

Tree treeOf(const InkBook& ink, const LayerNeed& need) {
    Tree tree = Tree::object();
    tree.set("layer", layerAt(ink, need.layer).id).set("coverage", need.coverage);
    tree.set("coverageAssumed", need.coverageAssumed);
    tree.set("filmWeight_gm2", treeOf(need.film.weight_gm2));
    tree.set("filmWeightFrom", textOf(need.film.from)).set("pulls", need.film.pulls);
    tree.set("ink_g", treeOf(need.ink_g));
    tree.set("mix", need.mix < 0 ? Tree() : Tree(mixAt(ink, need.mix).id));
    return tree;
}

}  // namespace

void printHowMuch(Console& console, const InkBook& ink, const HowMuch& much) {
    Report(console, ink, much).print();
}

void addHowMuch(Tree& report, const InkBook& ink, const HowMuch& much) {
    report.set("edition", much.edition->id).set("sheets", much.sheets);
    report.set("spoilShare", much.spoilShare).set("spoilShareGiven", much.spoilGiven);
    Tree layers = Tree::array();
    for (const LayerNeed& need : much.layers)
        layers.add(treeOf(ink, need));
    report.set("layers", std::move(layers)).set("total_g", treeOf(much.total_g));
    Tree mixes = Tree::array();
    for (const MixInNeed& mix : much.mixes) {
        Tree one = Tree::object();
        one.set("mix", mixAt(ink, mix.need.mix).id).set("layers", mix.need.layers);
        one.set("needed_g", treeOf(mix.need.mass_g)).set("there_g", treeOf(mix.there_g));
        mixes.add(std::move(one));
    }
    report.set("mixes", std::move(mixes));
}

}  // namespace rackbook
