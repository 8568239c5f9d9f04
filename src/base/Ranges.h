// Ranges of whole numbers as people write them: "1-12,15".
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// Sorted, without repeats. Numbers lie in 1 … 100,000. Throws UsageError naming the part that is
// wrong: empty parts, reversed or overlapping ranges, signs, other characters.
std::vector<int> parseRanges(std::string_view text);

// The shortest such text: {1,2,3,5} gives "1-3,5". Pre: sorted, without repeats.
std::string formatRanges(const std::vector<int>& numbers);

}  // namespace rackbook
