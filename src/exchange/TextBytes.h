// Whether the bytes of a file are text that can be read.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rackbook {

struct TextFault {
    int line = 0;  // from 1, 0 where it is the whole file
    std::string what;
    std::string remedy;
};

// Why bytes are no UTF-8 text with something in it: blank, UTF-16, control characters that no text
// has, or another encoding. Nothing where all is well. `instead` says what kind of file to give.
std::optional<TextFault> textFaultIn(std::string_view bytes, const std::string& instead);

}  // namespace rackbook
