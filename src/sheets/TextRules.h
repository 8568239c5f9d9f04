// What text a sheet can set. Text is drawn one character after the other from left to right,
// without shaping: scripts that run the other way or join their letters are refused, not spoiled.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sheets/TextMeasurer.h"

namespace rackbook {

struct ScriptRange {
    char32_t first;
    char32_t last;
    const char* name;
};

// The range of a character that needs shaping or runs from right to left, or nothing.
std::optional<ScriptRange> unsettableScript(char32_t character);

// "U+05D0"
std::string codePointName(char32_t character);

// The text in normal form C, without invisible format characters; tabs become spaces and line
// feeds stay. Throws RenderError, naming `where`, the character and the text, where the text is
// not UTF-8, holds a control character or one that cannot be set or that no font has.
std::string settable(const TextMeasurer& measurer, FontRole role, std::string_view text,
                     const std::string& where);

}  // namespace rackbook
