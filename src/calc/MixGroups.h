// How mixes take from one another: which come first, and which form a ring.
#pragma once

#include <cstddef>
#include <vector>

namespace rackbook {

// For each mix the mixes it takes from: those of mix i are items[offsets[i]] … before
// items[offsets[i + 1]].
struct MixParents {
    std::vector<std::size_t> offsets;
    std::vector<int> items;
};

// Groups of mixes, every group after those that its mixes take from. A mix that is in no ring is a
// group of its own.
std::vector<std::vector<int>> mixGroups(const MixParents& parents);

}  // namespace rackbook
