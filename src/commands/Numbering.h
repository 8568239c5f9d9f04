// Designations that follow each other: 1/20, 2/20, 3/20 or AP I/III, AP II/III.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// `count` designations, the first as written and each later one a number higher, in the same
// letters or digits. Throws UsageError where more than one is wanted and `first` has no number that
// can be counted on, where counting begins at nought, or where it goes past the number it is
// counted out of.
std::vector<std::string> successiveDesignations(const std::string& first, std::size_t count);

}  // namespace rackbook
