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
    std::optional<int> declared;
    int designated = 0;                     // impressions that were given such a designation
    std::vector<std::string> designations;  // as written, in the order of the impressions
};

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
};

// `firstLayer` holds the ids of the impressions that the first layer was printed on.
EditionTally tallyOf(const Edition& edition, const std::vector<Impression>& impressions,
                     const std::set<std::string>& firstLayer);

}  // namespace rackbook
