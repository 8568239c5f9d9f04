// What the book keeps between records, beyond that each reference leads somewhere. Private to
// store/.
#pragma once

#include <cstdint>
#include <vector>

#include "records/RecordKind.h"
#include "store/Intake.h"
#include "store/Sqlite.h"

namespace rackbook {

// A record that the intake in hand has written.
struct Touched {
    std::size_t index = 0;  // in the list of entries
    RecordKind kind = RecordKind::book;
    std::int64_t key = 0;
    bool isNew = false;
};

// Looks only at what the touched records can have broken: one book record; an edition's code, an
// impression's working number, a layer's ordinal given once; no cycle among mixes or places;
// impressions pulled belong to the layer's edition, whichever of the three is touched.
std::vector<IntakeProblem> brokenBookRules(const Database& database,
                                           const std::vector<Touched>& touched);

}  // namespace rackbook
