// A description in the elements of Dublin Core (ISO 15836-1), for catalogues.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace rackbook {

// XML as archives exchange it (the container oai_dc). `elements` are names such as "title" and
// their values, in order; characters that XML cannot hold become U+FFFD.
std::string dublinCoreText(const std::vector<std::pair<std::string, std::string>>& elements);

}  // namespace rackbook
