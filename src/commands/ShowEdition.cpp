#include "commands/ShowEdition.h"

#include <algorithm>
#include <map>

#include "base/Numbers.h"
#include "calc/MixLedger.h"
#include "cli/Table.h"
#include "records/Designation.h"
#include "store/HistoryPart.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::string percentOr(const Estimate& share, const char* otherwise) {
    return share.isKnown() ? formatFixed(share.best * 100, 1) : otherwise;
}

// One pull of a layer, or a layer that was not pulled yet.
struct LayerRun {
    Layer layer;
    std::optional<Pull> pull;
    Estimate base;  // shares of the ink
    Estimate drier;
};

std::vector<LayerRun> runsOf(const BookFile& book, const Edition& edition) {
    std::vector<LayerRun> runs;
    InkPartWanted wanted;
    for (const Layer& layer : thoseOf<Layer>(book, "edition", edition.id)) {
        const std::vector<Pull> pulls = thoseOf<Pull>(book, "layer", layer.id);
        for (const Pull& pull : pulls) {
            runs.push_back({layer, pull, {}, {}});
            wanted.pulls.push_back(pull.id);
        }
        if (pulls.empty())
            runs.push_back({layer, std::nullopt, {}, {}});
    }
    const PartOfInk part = inkPartOf(book, wanted);
    const MixLedger ledger(ledgerByKind(part.history));
    for (LayerRun& run : runs) {
        if (!run.pull)
            continue;
        const std::size_t position = positionIn(part.pulls, run.pull->id);
        run.base = ledger.shareAtPull(position, static_cast<int>(LotKind::base));
        run.drier = ledger.shareAtPull(position, static_cast<int>(LotKind::drier));
    }
    std::stable_sort(runs.begin(), runs.end(), [](const LayerRun& a, const LayerRun& b) {
        return a.layer.ordinal < b.layer.ordinal;
    });
    return runs;
}

std::string baseText(const LayerRun& run) {
    if (!run.base.isKnown() && run.layer.extenderShare)
        return formatFixed(*run.layer.extenderShare * 100, 1) + " (remembered)";
    return percentOr(run.base, "not known");
}

void printLayers(Console& console, const BookFile& book, const Edition& edition) {
    Table table({{"layer", Align::right},
                 {"colour"},
                 {"pulled"},
                 {"sheets", Align::right},
                 {"spoiled", Align::right},
                 {"base %", Align::decimal},
                 {"drier %", Align::decimal},
                 {"pull"}});
    for (const LayerRun& run : runsOf(book, edition)) {
        const std::string ordinal = std::to_string(run.layer.ordinal);
        if (run.pull)
            table.addRow({ordinal, run.layer.colourWords, run.pull->start.text(),
                          std::to_string(run.pull->impressions.size()),
                          std::to_string(run.pull->spoiled.size()), baseText(run),
                          percentOr(run.drier, "not known"), run.pull->id});
        else
            table.addRow({ordinal, run.layer.colourWords, "not yet", "", "", "", "", ""});
    }
    console.out() << "\n"
                  << console.emphasis("Layers in printing order") << "\n"
                  << table.text(console.width(), "No layer is planned yet.");
}

struct CountLine {
    std::string words;
    std::size_t count = 0;
};

std::vector<CountLine> countOf(const BookFile& book, const Edition& edition) {
    std::map<std::string, std::size_t> counts;
    std::size_t all = 0;
    for (const Impression& impression : thoseOf<Impression>(book, "edition", edition.id)) {
        ++all;
        if (impression.fate != ImpressionFate::kept)
            ++counts[textOf(impression.fate)];
        else if (impression.designationKind)
            ++counts[designationWords(*impression.designationKind)];
        else
            ++counts["not signed yet"];
    }
    std::vector<CountLine> lines;
    for (const auto& [words, count] : counts)
        lines.push_back({words, count});
    lines.push_back({"together", all});
    return lines;
}

void printCount(Console& console, const BookFile& book, const Edition& edition) {
    Table table({{"impressions"}, {"count", Align::right}});
    for (const CountLine& line : countOf(book, edition))
        table.addRow({line.words, std::to_string(line.count)});
    console.out() << "\n" << console.emphasis("Count") << "\n" << table.text(console.width(), "");
}

}  // namespace

void printEdition(Console& console, const BookFile& book, const Edition& edition) {
    printLayers(console, book, edition);
    printCount(console, book, edition);
}

void addEdition(Tree& report, const BookFile& book, const Edition& edition) {
    Tree runs = Tree::array();
    for (const LayerRun& run : runsOf(book, edition)) {
        Tree one = Tree::object();
        one.set("layer", run.layer.id).set("ordinal", run.layer.ordinal);
        if (run.pull) {
            one.set("pull", run.pull->id).set("start", run.pull->start.text());
            one.set("sheets", run.pull->impressions.size());
            one.set("spoiled", run.pull->spoiled.size());
            one.set("baseShare", run.base.best).set("drierShare", run.drier.best);
        }
        runs.add(std::move(one));
    }
    report.set("layers", std::move(runs));
    Tree counts = Tree::object();
    for (const CountLine& line : countOf(book, edition))
        counts.set(line.words, line.count);
    report.set("count", std::move(counts));
}

}  // namespace rackbook
