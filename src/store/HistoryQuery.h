// The flat history of impressions (records/History.h), read for computing over many at once.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/History.h"
#include "store/BookFile.h"

namespace rackbook {

// Which impressions are wanted; absent for all of the book. The two are joined by "and".
struct HistoryFilter {
    std::optional<std::string> edition;                   // id
    std::optional<std::vector<std::string>> impressions;  // ids
};

// Throws StoreError. Reads in one transaction, so that what it gives belongs together.
History historyIn(const BookFile& book, const HistoryFilter& filter = {});

// The part that mixes are computed from: editions, layers, lots, mixes, weighings and pulls,
// without impressions and what happened to them. Throws StoreError.
History inkHistoryIn(const BookFile& book);

// How an impression is named in lists.
struct ImpressionLabel {
    std::string id;
    std::string edition;  // code
    int workingNumber = 0;
    std::string designation;  // empty where none was given yet
};

// By position of the impression in the history.
std::vector<ImpressionLabel> labelsOf(const BookFile& book, const History& history);

// The statements that historyIn and inkHistoryIn run for a whole book, for measuring them against a
// bare scan.
std::vector<std::string> historyQueries();
std::vector<std::string> inkHistoryQueries();

}  // namespace rackbook
