// Parses a PDF for the files inside. Only to be called in a guarded process: the PDF library may
// crash or not come back.
#pragma once

#include <cstddef>
#include <string>

namespace rackbook {

// The answer, see CarriedFilesAnswer.h. `mostBytes` limits the files inside, all together.
std::string carriedFilesAnswer(const std::string& path, std::size_t mostBytes);

}  // namespace rackbook
