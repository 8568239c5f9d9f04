// Where figures stand in a column that is aligned on the decimal point.
#pragma once

#include <cstddef>
#include <string_view>

namespace rackbook {

// Byte offset of the place to align on: the decimal sign of the first number, else the end of its
// digits, else the end of the text. A point, a comma, an apostrophe, a thin or a no-break space
// between digits belongs to the number, where it is not the decimal sign.
std::size_t decimalPlace(std::string_view text, std::string_view decimalSign = ".");

}  // namespace rackbook
