// Rows that name a row that is not there. Private to store/.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "store/Sqlite.h"

namespace rackbook {

struct BrokenReference {
    std::string table;        // of the row that names it
    std::string wantedTable;  // where it should be
    std::int64_t wantedKey = 0;
};

// Throws StoreError.
std::vector<BrokenReference> brokenReferencesIn(const Database& database);

}  // namespace rackbook
