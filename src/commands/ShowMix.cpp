#include "commands/ShowMix.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/MixLedger.h"
#include "cli/Table.h"
#include "cli/Wrap.h"
#include "commands/RecordNamed.h"
#include "store/HistoryPart.h"
#include "store/RecordReader.h"

namespace rackbook {

class MixShowingMaker {
public:
    MixShowingMaker(const BookFile& book, const InkPartWanted& wanted, CivilMinute asOf)
        : m_part(inkPartOf(book, wanted)), m_ledger(ledgerByLot(m_part.history, asOf)) {
        for (const std::string& id : m_part.lots)
            m_lots.push_back(*findIn<Lot>(book, id));
    }

    const MixLedger& ledger() const { return m_ledger; }
    const PartOfInk& part() const { return m_part; }

    // `mass_g` replaces the ledger's own mass where it is known.
    MixShowing showing(const std::string& heading, const MixContents& contents,
                       double mass_g) const {
        MixShowing made;
        made.m_heading = heading;
        made.m_massKnown = !std::isnan(mass_g);
        made.m_mass_g = mass_g;
        made.m_unrecordedHigh = contents.unrecorded.high;
        made.m_composition = compositionOf(contents, m_lots);
        for (const MixPart& part : contents.parts) {
            if (part.share.high <= 0)
                continue;
            const Lot& lot = m_lots[static_cast<std::size_t>(part.constituent)];
            made.m_lines.push_back({lot.id, textOf(lot.lotKind), lot.colourWords,
                                    joined(lot.pigments, ", "), mass_g * part.share.best,
                                    part.share.low, part.share.best, part.share.high});
        }
        std::stable_sort(made.m_lines.begin(), made.m_lines.end(),
                         [](const MixShowing::Line& a, const MixShowing::Line& b) {
                             return a.shareHigh > b.shareHigh;
                         });
        return made;
    }

private:
    PartOfInk m_part;
    MixLedger m_ledger;
    std::vector<Lot> m_lots;  // in the order of the part's lots
};

namespace {

Tree withShare(Tree tree, const Estimate& share) {
    return tree.set("share", share.best).set("shareLow", share.low).set("shareHigh", share.high);
}

std::string partWords(const CompositionPart& part) {
    static constexpr const char* kinds[] = {"ink", "base", "drier", "modifier"};
    const std::string kind = kinds[static_cast<std::size_t>(part.lotKind)];
    if (part.lotKind != LotKind::ink)
        return kind;
    return part.pigments.empty() ? kind + " of unstated pigments" : joined(part.pigments, ", ");
}

// To the thousandth of a per cent, with bounds where they differ.
std::string exactPercent(const Estimate& share) {
    const std::string bounds =
        formatFixed(share.low * 100, 3) + "–" + formatFixed(share.high * 100, 3) + " %";
    if (std::isnan(share.best))
        return bounds;
    const std::string best = formatFixed(share.best * 100, 3) + " %";
    return share.high - share.low < 1e-9 ? best : best + " (" + bounds + ")";
}

// "In all: base 98.0 % and drier 2.0 %. From the drier, of the ink: manganese 0.08 %."
std::string compositionWords(const Composition& composition) {
    if (composition.parts.empty())
        return {};
    std::vector<std::string> parts;
    for (const CompositionPart& part : composition.parts)
        parts.push_back(partWords(part) + " " + exactPercent(part.share));
    std::string words = "In all: " + joined(parts) + ".";
    std::vector<std::string> metals;
    for (const MetalPart& metal : composition.metals)
        metals.push_back(metal.metal + " " + exactPercent(metal.share));
    if (!metals.empty())
        words += " From the drier, of the ink: " + joined(metals) + ".";
    if (composition.hasUnstatedMetals)
        words += " A drier in it does not state its metals or their content.";
    return words;
}

std::string percent(double share) {
    return std::isnan(share) ? "not known" : formatFixed(share * 100, 3);
}

}  // namespace

MixShowing MixShowing::ofMix(const BookFile& book, const Mix& mix, CivilMinute asOf) {
    const MixShowingMaker maker(book, {{}, {mix.id}, {}}, asOf);
    const MixContents contents = maker.ledger().atEnd(positionIn(maker.part().mixes, mix.id));
    return maker.showing("What it holds now", contents, contents.total_g.best);
}

MixShowing MixShowing::ofPull(const BookFile& book, const Pull& pull) {
    const MixShowingMaker maker(book, {{pull.id}, {}, {}}, endOfTime);
    const std::size_t position = positionIn(maker.part().pulls, pull.id);
    return maker.showing("What was laid down", maker.ledger().atPull(position),
                         maker.part().history.pulls[position].inkUsed_g);
}

void printWeighings(Console& console, const BookFile& book, const Mix& mix) {
    std::vector<Weighing> weighings;
    for (const std::string& id : inkPartOf(book, {{}, {mix.id}, {}}).weighings) {
        Weighing weighing = *findIn<Weighing>(book, id);
        if (weighing.mix.id == mix.id || (weighing.fromMix && weighing.fromMix->id == mix.id))
            weighings.push_back(std::move(weighing));
    }
    std::stable_sort(weighings.begin(), weighings.end(), [](const Weighing& a, const Weighing& b) {
        return a.at.earliest() != b.at.earliest() ? a.at.earliest() < b.at.earliest()
                                                  : a.sequence < b.sequence;
    });
    Table table({{"when"}, {"what"}, {"g", Align::decimal}, {"weighing"}});
    for (const Weighing& weighing : weighings) {
        std::string what;
        if (weighing.mix.id != mix.id)
            what = "out, into mix " + weighing.mix.id;
        else if (weighing.lot)
            what = "in, from lot " + weighing.lot->id;
        else if (weighing.fromMix)
            what = "in, from mix " + weighing.fromMix->id;
        else
            what = weighing.act == WeighingAct::discard ? "out, thrown away" : "out";
        table.addRow({weighing.at.text(), what,
                      weighing.mass_g ? formatShortest(*weighing.mass_g) : "not known",
                      weighing.id});
    }
    console.out() << "\n"
                  << console.emphasis("What went in and out") << "\n"
                  << table.text(console.width(), "No weighing is recorded.");
}

void MixShowing::print(Console& console) const {
    console.out() << "\n" << console.emphasis(m_heading);
    if (m_massKnown)
        console.out() << ": " << formatFixed(m_mass_g, 3) << " g";
    console.out() << "\n";
    Table table({{"lot"},
                 {"kind"},
                 {"colour"},
                 {"pigments"},
                 {"g", Align::decimal},
                 {"%", Align::decimal},
                 {"% from–to", Align::right}});
    for (const Line& line : m_lines) {
        const bool exact = line.shareHigh - line.shareLow < 1e-9;
        table.addRow({line.lot, line.kind, line.colourWords, line.pigments,
                      std::isnan(line.mass_g) ? "" : formatFixed(line.mass_g, 3),
                      percent(line.share),
                      exact ? "" : percent(line.shareLow) + "–" + percent(line.shareHigh)});
    }
    console.out() << table.text(console.width(), "No weighing says what it is made of.");
    for (const std::string& line : wrapped(compositionWords(m_composition), console.width()))
        if (!line.empty())
            console.out() << printable(line) << "\n";
    if (m_lines.empty() && m_unrecordedHigh > 0)
        console.out() << "What it was made of was never recorded.\n";
    else if (m_unrecordedHigh > 0)
        console.out() << "Up to " << percent(m_unrecordedHigh)
                      << " % came from contents that were never recorded.\n";
}

Tree MixShowing::tree() const {
    Tree tree = Tree::object();
    tree.set("mass_g", m_mass_g);
    Tree parts = Tree::array();
    for (const Line& line : m_lines) {
        Tree part = Tree::object();
        part.set("lot", line.lot).set("lotKind", line.kind);
        part.set("mass_g", line.mass_g).set("share", line.share);
        part.set("shareLow", line.shareLow).set("shareHigh", line.shareHigh);
        parts.add(std::move(part));
    }
    tree.set("parts", std::move(parts));
    Tree composition = Tree::array();
    for (const CompositionPart& part : m_composition.parts) {
        Tree pigments = Tree::array();
        for (const std::string& pigment : part.pigments)
            pigments.add(pigment);
        composition.add(
            withShare(Tree::object().set("lotKind", textOf(part.lotKind)).set("pigments", pigments),
                      part.share));
    }
    tree.set("composition", std::move(composition));
    Tree metals = Tree::array();
    for (const MetalPart& metal : m_composition.metals)
        metals.add(withShare(Tree::object().set("metal", metal.metal), metal.share));
    tree.set("metals", std::move(metals)).set("hasUnstatedMetals", m_composition.hasUnstatedMetals);
    tree.set("unrecordedShareHigh", m_unrecordedHigh);
    return tree;
}

}  // namespace rackbook
