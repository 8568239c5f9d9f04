// Characters as UTF-8.
#pragma once

#include <string>
#include <string_view>

namespace rackbook {

// U+FEFF at the beginning of a text, by which some programs know UTF-8.
constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

// Pre: a code point, no surrogate.
inline void appendUtf8(std::string& text, char32_t c) {
    const auto tail = [&](int shift) { text += static_cast<char>(0x80 | ((c >> shift) & 0x3F)); };
    if (c < 0x80) {
        text += static_cast<char>(c);
    } else if (c < 0x800) {
        text += static_cast<char>(0xC0 | (c >> 6));
        tail(0);
    } else if (c < 0x10000) {
        text += static_cast<char>(0xE0 | (c >> 12));
        tail(6);
        tail(0);
    } else {
        text += static_cast<char>(0xF0 | (c >> 18));
        tail(12);
        tail(6);
        tail(0);
    }
}

}  // namespace rackbook
