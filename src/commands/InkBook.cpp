#include "commands/InkBook.h"

#include "base/Text.h"
#include "calc/HistoryOf.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::optional<TimeSpan> spanOf(const std::optional<EdtfDate>& date) {
    return date ? std::optional(TimeSpan{date->earliest(), date->latest()}) : std::nullopt;
}

// How long a lot keeps once it was opened, by the house rule for its container.
double openedLife_daysOf(const Lot& lot, const HouseRules& rules) {
    const bool closesTight = lot.container == Container::tube ||
                             lot.container == Container::cartridge ||
                             lot.container == Container::bottle;
    return rules.value(closesTight ? "openedLifeTube_days" : "openedLifeTin_days");
}

}  // namespace

InkBook inkBookOf(const BookFile& book) {
    return inkBookOf(everythingIn(book));
}

InkBook inkBookOf(RecordSet records) {
    Book studio = records.of<Book>().front();
    HouseRules rules(studio.houseRules);
    History history = historyOf(records);
    return {std::move(studio), std::move(rules), std::move(records), std::move(history)};
}

const Lot& lotAt(const InkBook& ink, int position) {
    return ink.records.of<Lot>()[static_cast<std::size_t>(position)];
}

const Mix& mixAt(const InkBook& ink, int position) {
    return ink.records.of<Mix>()[static_cast<std::size_t>(position)];
}

std::vector<LotFacts> lotFactsOf(const InkBook& ink) {
    std::vector<LotFacts> facts;
    for (const Lot& lot : ink.records.of<Lot>()) {
        LotFacts fact;
        fact.netMass_g = lot.netMass_g.value_or(notKnown);
        fact.price = lot.price.value_or(notKnown);
        fact.opened = spanOf(lot.openedOn);
        fact.finished = spanOf(lot.finishedOn);
        fact.openedLife_days = openedLife_daysOf(lot, ink.rules);
        facts.push_back(fact);
    }
    return facts;
}

std::vector<LotOnShelf> shelfOf(const InkBook& ink, CivilMinute asOf) {
    const std::vector<LotUse> uses = lotUseOf(ink, asOf);
    std::vector<LotOnShelf> shelf;
    for (const Lot& lot : ink.records.of<Lot>())
        shelf.push_back({lot.lotKind, lot.colourWords, lot.pigments, lot.drierMetals,
                         spanOf(lot.boughtOn), spanOf(lot.openedOn), spanOf(lot.finishedOn),
                         uses[shelf.size()].left_g});
    return shelf;
}

std::vector<RecipeMix> recipeMixesOf(const InkBook& ink) {
    std::vector<RecipeMix> mixes;
    for (const Mix& mix : ink.records.of<Mix>())
        mixes.push_back({mix.name, mix.purpose});
    return mixes;
}

std::vector<HeapFacts> heapFactsOf(const InkBook& ink) {
    std::vector<HeapFacts> facts;
    for (const Mix& mix : ink.records.of<Mix>())
        facts.push_back({spanOf(mix.madeOn), spanOf(mix.finishedOn)});
    return facts;
}

std::vector<LotKind> lotKindsOf(const InkBook& ink) {
    std::vector<LotKind> kinds;
    for (const Lot& lot : ink.records.of<Lot>())
        kinds.push_back(lot.lotKind);
    return kinds;
}

std::vector<HistoryStockTake> stockTakesOf(const InkBook& ink) {
    std::vector<HistoryStockTake> takes;
    for (const StockTake& take : ink.records.of<StockTake>())
        takes.push_back({ink.records.indexOf<Lot>(take.lot.id),
                         {take.at.earliest(), take.at.latest()},
                         take.mass_g});
    return takes;
}

std::vector<LotUse> lotUseOf(const InkBook& ink, CivilMinute asOf) {
    const std::vector<LotFacts> facts = lotFactsOf(ink);
    const std::vector<HistoryStockTake> takes = stockTakesOf(ink);
    return useOfLots({ink.history, facts, takes, asOf});
}

Estimate leftInMix(const InkBook& ink, const MixLedger& ledger, std::size_t mix, CivilMinute asOf) {
    const std::optional<EdtfDate>& finished = ink.records.of<Mix>()[mix].finishedOn;
    return finished && finished->latest() <= asOf ? Estimate::exactly(0)
                                                  : ledger.atEnd(mix).total_g;
}

std::string lotWords(const Lot& lot) {
    // What the container says comes first, how it looks after a semicolon.
    return lot.id + ", " + lot.colourWords.substr(0, lot.colourWords.find(';')) +
           (lot.pigments.empty() ? "" : " (" + joined(lot.pigments, ", ") + ")");
}

std::string layerWords(const InkBook& ink, const Layer& layer) {
    const Edition* edition = ink.records.find(layer.edition);
    return "layer " + std::to_string(layer.ordinal) + " of " +
           (edition ? edition->code : layer.edition.id) + " (" + layer.colourWords + ")";
}

}  // namespace rackbook
