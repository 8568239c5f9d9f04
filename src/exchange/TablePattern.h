// Text with headings in braces, as "{Code}/{#2}". Private to exchange/.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace rackbook {

struct PatternPiece {
    enum class Kind { literal, column, number };
    Kind kind = Kind::literal;
    std::string text;       // the literal, or the heading
    std::size_t width = 0;  // least digits of a number
};

// "{{" is a brace, "{#}" and "{#2}" the number of what is counted. Nothing where a brace is not
// closed or names nothing.
std::optional<std::vector<PatternPiece>> patternPieces(const std::string& pattern);

// The same for a pattern that was found sound.
std::vector<PatternPiece> soundPieces(const std::string& pattern);

}  // namespace rackbook
