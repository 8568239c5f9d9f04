// What the verbs about ink read of a book: records, and the flat history that refers to them by
// position.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "calc/HeapLife.h"
#include "calc/LotUse.h"
#include "calc/MixLedger.h"
#include "calc/RecipeOf.h"
#include "calc/Substitutes.h"
#include "records/Balance.h"
#include "records/HouseRules.h"
#include "records/RecordSet.h"
#include "store/BookFile.h"

namespace rackbook {

// Positions in the history's editions, layers, lots, mixes, pulls are those in `records`; its
// impressions are all of the book's, by edition and working number.
struct InkBook {
    Book studio;
    HouseRules rules;
    RecordSet records;
    History history;
};

// Throws StoreError.
InkBook inkBookOf(const BookFile& book);
// Pre: the studio's own record is among them.
InkBook inkBookOf(RecordSet records);

template <class R>
void addIdsOf(const InkBook& ink, std::vector<std::string>& ids) {
    for (const R& record : ink.records.of<R>())
        ids.push_back(record.id);
}

// By position. The references hold as long as the ink book.
const Lot& lotAt(const InkBook& ink, int position);
const Mix& mixAt(const InkBook& ink, int position);

// Each by position of the lot or mix.
std::vector<LotFacts> lotFactsOf(const InkBook& ink);
std::vector<LotOnShelf> shelfOf(const InkBook& ink, CivilMinute asOf);
std::vector<RecipeMix> recipeMixesOf(const InkBook& ink);
std::vector<HeapFacts> heapFactsOf(const InkBook& ink);
std::vector<LotKind> lotKindsOf(const InkBook& ink);

std::vector<HistoryStockTake> stockTakesOf(const InkBook& ink);
std::vector<LotUse> lotUseOf(const InkBook& ink, CivilMinute asOf);

// What a mix still holds: nothing once it is finished.
Estimate leftInMix(const InkBook& ink, const MixLedger& ledger, std::size_t mix, CivilMinute asOf);

// "field-rose-1, Field rose (PV19)"
std::string lotWords(const Lot& lot);

// "layer 4 of EEL (Warm apricot)"
std::string layerWords(const InkBook& ink, const Layer& layer);

}  // namespace rackbook
