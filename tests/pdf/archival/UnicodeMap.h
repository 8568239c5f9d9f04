// The ToUnicode CMap of a font (ISO 32000-1, 9.10.3).
#pragma once

#include <map>
#include <string>

namespace rackbook {

// UTF-16BE by code, for codes of two bytes. Throws std::runtime_error where the syntax is broken.
std::map<unsigned, std::string> unicodeMapIn(const std::string& cmap);

// The number that a big-endian string of up to four bytes is.
unsigned codeIn(const std::string& bytes);

}  // namespace rackbook
