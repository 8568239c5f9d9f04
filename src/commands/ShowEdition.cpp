#include "commands/ShowEdition.h"

#include <algorithm>
#include <map>

#include "base/Numbers.h"
#include "calc/MixLedger.h"
#include "cli/Table.h"
#include "records/Designation.h"
#include "store/HistoryQuery.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::string percentOr(const Estimate& share, const char* otherwise) {
    return share.isKnown() ? formatFixed(share.best * 100, 1) : otherwise;
}

void printLayers(Console& console, const BookFile& book, const Edition& edition) {
    const History history = historyIn(book);
    const MixLedger ledger(ledgerByKind(history));
    const std::vector<Pull> pulls = allOf<Pull>(book);  // in the order of the history's pulls
    std::vector<Layer> layers;
    for (Layer& layer : allOf<Layer>(book))
        if (layer.edition.id == edition.id)
            layers.push_back(std::move(layer));
    std::sort(layers.begin(), layers.end(),
              [](const Layer& a, const Layer& b) { return a.ordinal < b.ordinal; });
    Table table({{"layer", Align::right},
                 {"colour"},
                 {"pulled"},
                 {"sheets", Align::right},
                 {"spoiled", Align::right},
                 {"base %", Align::decimal},
                 {"drier %", Align::decimal},
                 {"pull"}});
    for (const Layer& layer : layers) {
        bool any = false;
        for (std::size_t i = 0; i < pulls.size(); ++i) {
            if (pulls[i].layer.id != layer.id)
                continue;
            any = true;
            const auto share = [&](LotKind kind) {
                return percentOr(ledger.shareAtPull(i, static_cast<int>(kind)), "not known");
            };
            table.addRow({std::to_string(layer.ordinal), layer.colourWords, pulls[i].start.text(),
                          std::to_string(pulls[i].impressions.size()),
                          std::to_string(pulls[i].spoiled.size()), share(LotKind::base),
                          share(LotKind::drier), pulls[i].id});
        }
        if (!any)
            table.addRow(
                {std::to_string(layer.ordinal), layer.colourWords, "not yet", "", "", "", "", ""});
    }
    console.out() << "\n"
                  << console.emphasis("Layers in printing order") << "\n"
                  << table.text(console.width(), "No layer is planned yet.");
}

void printCount(Console& console, const BookFile& book, const Edition& edition) {
    std::map<std::string, std::size_t> counts;
    std::size_t all = 0;
    for (const Impression& impression : allOf<Impression>(book)) {
        if (impression.edition.id != edition.id)
            continue;
        ++all;
        if (impression.fate != ImpressionFate::kept)
            ++counts[textOf(impression.fate)];
        else if (impression.designationKind)
            ++counts[designationWords(*impression.designationKind)];
        else
            ++counts["not signed yet"];
    }
    Table table({{"impressions"}, {"count", Align::right}});
    for (const auto& [words, count] : counts)
        table.addRow({words, std::to_string(count)});
    table.addRow({"together", std::to_string(all)});
    console.out() << "\n" << console.emphasis("Count") << "\n" << table.text(console.width(), "");
}

}  // namespace

void printEdition(Console& console, const BookFile& book, const Edition& edition) {
    printLayers(console, book, edition);
    printCount(console, book, edition);
}

}  // namespace rackbook
