// The arithmetic of an edition's count: what was declared, what was signed, and what became of the
// sheets that were begun.
#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "records/Edition.h"
#include "records/Impression.h"

namespace rackbook {

struct TallyRow {
    DesignationKind designationKind = DesignationKind::numbered;
    std::optional<int> declared;  // absent too where the edition says nothing of such proofs
    int designated = 0;           // impressions that were given such a designation
    std::vector<std::string> designations;  // as written, in the order of the impressions
};

// Designations of one form, "7/30", all out of the same number.
struct Numbering {
    int of = 0;
    std::vector<int> numbers;  // sorted, without repeats, at least one

    // Of 1 … of, those that nothing carries.
    std::vector<int> missing() const;
};

// Nothing where they are not all of that form, or one is there twice.
std::optional<Numbering> numberingOf(const TallyRow& row);

struct EditionTally {
    std::vector<TallyRow> rows;      // numbered first, then proofs in the order of the kinds
    int designatedWithoutKind = 0;   // not in any of the rows
    std::optional<int> declaredSum;  // of the rows; absent where the numbered size is not recorded
    int designated = 0;              // of all rows and of those without a kind

    // printedFirst + notInFirst − spoiled − destroyed = kept = keptSigned + keptUnsigned; where no
    // pull of the first layer is recorded, all impressions count as notInFirst.
    std::optional<int> printedFirst;  // sheets printed at the first layer
    int notInFirst = 0;
    int spoiled = 0;
    int destroyed = 0;
    int kept = 0;
    int keptSigned = 0;
    int keptUnsigned = 0;

    // The numbering, where more numbers below the highest are missing than there are sheets that
    // could still be given one: there were sheets that the record does not know.
    std::optional<Numbering> withGaps;
};

// `firstLayer` holds the ids of the impressions that the first layer was printed on.
EditionTally tallyOf(const Edition& edition, const std::vector<Impression>& impressions,
                     const std::set<std::string>& firstLayer);

}  // namespace rackbook
