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

// The history of those impressions (ids), and of editions, layers, lots, mixes, weighings, pulls,
// moves and looks only what it takes to judge them as the whole book would: positions are not those
// of the whole book. All places are in it. Costs what it gives. Throws StoreError.
struct PrintsPart {
    History history;
    std::vector<std::string> looks;  // ids, by position
};
PrintsPart historyOfPrints(const BookFile& book, const std::vector<std::string>& impressions);

// Leaves those impressions (ids) alone in a history of the whole book; positions of all else stay.
void keepPrints(const BookFile& book, History& whole, const std::vector<std::string>& impressions);

// What a part of the ink history is about, by id; ids that the book does not know are left out.
struct InkPartWanted {
    std::vector<std::string> pulls;
    std::vector<std::string> mixes;
    std::vector<std::string> lots;
};

// Of the ink history what it takes to tell, of those mixes and of the portions of those pulls, what
// the whole book would: what went in and out of them and of those that they were made from, by way
// of others; and all that was weighed out of those lots. Other mixes stand in it too, and are not
// to be asked. In the order of recording; the ids are by position.
struct PartOfInk {
    History history;
    std::vector<std::string> lots;
    std::vector<std::string> mixes;
    std::vector<std::string> weighings;
    std::vector<std::string> pulls;
};

// Costs what it gives. Throws StoreError.
PartOfInk inkPartOf(const BookFile& book, const InkPartWanted& wanted);

// The position of an id; their number where it is not among them.
std::size_t positionIn(const std::vector<std::string>& ids, const std::string& id);

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
