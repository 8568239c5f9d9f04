#include "commands/StockFactsOf.h"

#include <algorithm>

#include "commands/InkBook.h"
#include "commands/StockReport.h"
#include "records/AsItStood.h"

namespace rackbook {

namespace {

bool isOutOfStudio(const Place& place) {
    return place.holder || place.placeKind == PlaceKind::gallery ||
           place.placeKind == PlaceKind::holderAddress;
}

void addPlace(StockLine& line, const RecordSet& records) {
    const Place* const own = records.find(line.lot.place);
    if (!own)
        return;
    line.place = own->name;
    // A place may lie within itself by mistake, so the way up is bounded.
    const Place* at = own;
    for (std::size_t steps = 0; at && steps <= records.of<Place>().size(); ++steps) {
        line.isAway = line.isAway || isOutOfStudio(*at);
        at = records.find(at->within);
    }
    if (line.isAway)
        line.place.clear();
}

StockLine lineFor(const InkBook& ink, std::size_t position, const LotFacts& facts,
                  const LotUse& use, CivilMinute asOf) {
    StockLine line;
    line.lot = ink.records.of<Lot>()[position];
    line.usualLife_days = facts.openedLife_days;
    line.left_g = use.left_g;
    line.used_g = use.used_g;
    if (!use.differences.empty()) {
        const StockTake& take = ink.records.of<StockTake>()[use.differences.back().stockTake];
        line.counted = StockCount{take.at, take.mass_g};
    }
    line.isOld = isOld(use, asOf);
    line.isRunningLow = isNearlyOut(use, asOf);
    line.lacksMass = lacksMass(line.lot, use);
    addPlace(line, ink.records);
    return line;
}

// Pre: all are finished.
std::vector<StockLine> lastFinishedFirst(std::vector<StockLine> lines) {
    std::vector<std::pair<CivilMinute, std::size_t>> order;
    for (std::size_t i = 0; i < lines.size(); ++i)
        order.emplace_back(-lines[i].lot.finishedOn->latest(), i);
    std::sort(order.begin(), order.end());
    std::vector<StockLine> sorted;
    for (const auto& [finished, at] : order)
        sorted.push_back(std::move(lines[at]));
    return sorted;
}

}  // namespace

StockSheetFacts stockSheetFactsOf(const RecordSet& records, CivilMinute asOf) {
    const InkBook ink = inkBookOf(recordsAsOf(records, asOf));
    const std::vector<LotUse> uses = lotUseOf(ink, asOf);
    const std::vector<LotFacts> facts = lotFactsOf(ink);
    StockSheetFacts sheet;
    sheet.asOf = asOf;
    sheet.studio = ink.studio.studio;
    for (const std::string& rule : rulesOfStock())
        sheet.rules.push_back(ink.rules.rule(rule));
    for (std::size_t i = 0; i < uses.size(); ++i) {
        StockLine line = lineFor(ink, i, facts[i], uses[i], asOf);
        (line.lot.finishedOn ? sheet.finished : sheet.open).push_back(std::move(line));
    }
    sheet.finished = lastFinishedFirst(std::move(sheet.finished));
    return sheet;
}

}  // namespace rackbook
