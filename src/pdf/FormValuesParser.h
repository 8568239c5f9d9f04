// Parses a PDF for the values of its form. Only to be called in a guarded process: the PDF library
// may crash or not come back.
#pragma once

#include <cstddef>
#include <string>

namespace rackbook {

constexpr const char* formTick = "tick";
constexpr const char* formText = "text";
constexpr const char* formOn = "on";

// The answer, see CarriedFilesAnswer.h: after `found`, of each field the parts of its name (texts
// within a text), formTick or formText, and its bytes as they stand in the file, of a tick formOn
// or nothing. `mostBytes` limits all of them together.
std::string formValuesAnswer(const std::string& path, std::size_t mostBytes);

}  // namespace rackbook
