// The sheets that the word SHEETS of a command line names.
#pragma once

#include <string>
#include <vector>

#include "records/Impression.h"
#include "store/BookFile.h"
#include "store/HistoryQuery.h"

namespace rackbook {

struct SheetSelection {
    std::string editionId;           // empty where the sheets belong to several editions
    std::vector<Impression> sheets;  // never empty; by working number, or as listed
};

// An edition's id or code for all its kept impressions; a code with working numbers, such as
// "TIDE:1-12,15"; or ids of impressions with commas between. Throws UsageError naming every sheet
// that is not there, and the nearest edition.
SheetSelection sheetsNamed(const BookFile& book, const std::string& words);

// The history of those alone. Throws as sheetsNamed.
HistoryFilter filterNamed(const BookFile& book, const std::string& words);

// All impressions of an edition, whatever became of them, by working number.
std::vector<Impression> sheetsOf(const BookFile& book, const Edition& edition);

// Those of the working numbers that `ranges` names ("1-12,15"), out of `sheets`. Throws UsageError
// naming every number that none of them carries.
std::vector<Impression> sheetsNumbered(const std::vector<Impression>& sheets,
                                       const Edition& edition, const std::string& ranges);

// Their working numbers as ranges: "1-12,15".
std::string numbersOf(const std::vector<Impression>& sheets);

std::vector<Ref<Impression>> refsTo(const std::vector<Impression>& sheets);

}  // namespace rackbook
