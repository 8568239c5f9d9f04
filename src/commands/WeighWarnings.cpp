#include "commands/WeighWarnings.h"

#include <cmath>
#include <set>

#include "base/Numbers.h"
#include "calc/LotUse.h"
#include "calc/MixLedger.h"
#include "commands/Paragraph.h"
#include "records/HouseRules.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

void warnOfOverdraws(Console& console, const PartOfInk& part, std::size_t first,
                     double tolerance_g) {
    const MixLedger ledger(ledgerByLot(part.history));
    for (const Overdraw& overdraw : ledger.overdraws()) {
        const double short_g = std::isnan(overdraw.best_g) ? overdraw.least_g : overdraw.best_g;
        if (overdraw.event.isPull || overdraw.event.row < first || short_g <= tolerance_g)
            continue;
        console.out() << "\nBy the book, " << formatFixed(short_g, 2) << " g more was taken from "
                      << part.mixes[static_cast<std::size_t>(overdraw.mix)]
                      << " than was in it. Record what went in before, or weigh again.\n";
    }
}

void warnOfEmptyLots(Console& console, const BookFile& book, const PartOfInk& part,
                     std::size_t first, double tolerance_g) {
    const History& history = part.history;
    const std::vector<Estimate> taken = takenOutOfLots(history, endOfTime);
    std::set<int> told;
    for (std::size_t row = first; row < history.weighings.size(); ++row) {
        const int position = history.weighings[row].lot;
        if (position < 0 || !told.insert(position).second)
            continue;
        const Lot lot = *findIn<Lot>(book, part.lots[static_cast<std::size_t>(position)]);
        const double taken_g = taken[static_cast<std::size_t>(position)].low;
        if (lot.netMass_g && taken_g > *lot.netMass_g + tolerance_g)
            printParagraph(console,
                           "By the book, " + formatFixed(taken_g, 2) + " g were weighed out of " +
                               lot.id + ", and it held " + formatShortest(*lot.netMass_g) +
                               " g. Weigh again, or enter the new tin as a lot of its own.");
    }
}

}  // namespace

InkPartWanted inkPartBehind(const std::vector<Weighing>& weighings) {
    InkPartWanted wanted;
    for (const Weighing& weighing : weighings) {
        wanted.mixes.push_back(weighing.mix.id);
        if (weighing.fromMix)
            wanted.mixes.push_back(weighing.fromMix->id);
        if (weighing.lot)
            wanted.lots.push_back(weighing.lot->id);
    }
    return wanted;
}

void warnOfWeighings(Console& console, const BookFile& book, const PartOfInk& part,
                     std::size_t first) {
    const double tolerance_g =
        HouseRules(bookRecordOf(book).houseRules).value("overdrawTolerance_g");
    warnOfOverdraws(console, part, first, tolerance_g);
    warnOfEmptyLots(console, book, part, first, tolerance_g);
}

}  // namespace rackbook
