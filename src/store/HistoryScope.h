// Which rows a part of the flat history needs. Private to store/.
#pragma once

#include <cstdint>
#include <vector>

#include "store/Sqlite.h"

namespace rackbook {

// Keys in ascending order, each once.
struct HistoryScope {
    std::vector<std::int64_t> editions;
    std::vector<std::int64_t> layers;
    std::vector<std::int64_t> lots;
    std::vector<std::int64_t> mixes;
    std::vector<std::int64_t> weighings;
    std::vector<std::int64_t> pulls;
    std::vector<std::int64_t> moves;
    std::vector<std::int64_t> looks;
};

// What the part is about, by key.
struct HistorySeeds {
    std::vector<std::int64_t> impressions;
    std::vector<std::int64_t> pulls;
    std::vector<std::int64_t> mixes;
    std::vector<std::int64_t> lots;
};

// The impressions' pulls, moves and looks; of the pulls' portions and of the mixes all that went in
// and out, and the same of what they were made from, by way of others; all that was weighed out of
// the lots. Mixes that something went to are among them, with what went into them and into those
// before them, so that events of one moment come in the order that they have in the whole book.
// Throws StoreError.
HistoryScope scopeOf(const Database& database, const HistorySeeds& seeds);

}  // namespace rackbook
