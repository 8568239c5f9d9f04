// Parts of the flat history that cost what they give: of a few prints, or of some ink.
#pragma once

#include <string>
#include <vector>

#include "records/History.h"
#include "store/BookFile.h"

namespace rackbook {

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

}  // namespace rackbook
