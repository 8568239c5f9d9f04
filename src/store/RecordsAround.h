// Parts of a book: what belongs to a few editions and prints, or records of some kinds.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "records/RecordSet.h"
#include "store/BookFile.h"

namespace rackbook {

// By id.
struct AroundWanted {
    std::vector<std::string> editions;
    std::vector<std::string> impressions;  // beside those of the editions
    std::vector<std::string> transfers;
};

// All that belongs to those editions and prints, with what it names, by way of others: of records
// of other prints only those that are named. What belongs to the studio as a whole is in it too
// (places, parties, lots, balances, stock-takes, drawdowns, readings, weather, meterings). Lots and
// places stand where they stand in the whole book. In the order of recording. Throws StoreError.
RecordSet recordsAround(const BookFile& book, const AroundWanted& wanted);

// The records of those kinds alone.
RecordSet recordsOfKinds(const BookFile& book, const std::vector<RecordKind>& kinds);

// Pulls that can have begun at that minute or later.
std::vector<Pull> pullsSince(const BookFile& book, CivilMinute minute);

// Ids of the mixes that are not finished by `since`, and that something can have gone into or out
// of at that minute or later, or nothing ever went into. In the order of recording.
std::vector<std::string> mixesInUse(const BookFile& book, CivilMinute since);

// Transfers that end on a day.
std::vector<Transfer> transfersThatEnd(const BookFile& book);

// Pre: most is 1 or more. Ids of the prints that went through one of the latest `most` pulls begun
// by that minute, or by the minute at which the first of them began; nothing where the book has no
// more pulls than that.
std::optional<std::vector<std::string>> printsOfLatestPulls(const BookFile& book, std::size_t most,
                                                            CivilMinute asOf);

}  // namespace rackbook
