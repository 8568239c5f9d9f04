// The record that a sheet carries, read back and held against another.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/Tree.h"
#include "exchange/SheetRecords.h"

namespace rackbook {

struct SheetFacts {
    SheetHeading heading;
    bool namesHolders = false;
    // "lot base-2" and its fields, then "estimate EEL/07" and its figures.
    std::vector<std::pair<std::string, Tree>> records;
};

// Reads what SheetRecords::textFor wrote; the text may come from anybody. Throws InputError naming
// `file` where it is no JSON, not of that form, or of a newer one, and where
// it holds anything that such a text does not.
SheetFacts sheetFactsFrom(const std::string& text, const std::string& file);

struct FactsDifference {
    std::string record;   // "lot base-2"
    std::string field;    // empty where the whole record is on one side only
    std::string onSheet;  // its JSON text; empty for what is not there
    std::string inBook;
};

// In the order of the sheet, then what only the book has.
std::vector<FactsDifference> differencesBetween(const SheetFacts& onSheet,
                                                const SheetFacts& inBook);

}  // namespace rackbook
