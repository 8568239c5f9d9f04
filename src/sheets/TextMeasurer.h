// How wide and tall text is in the fonts of a sheet. The layout asks; a writer answers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// Two weights, and the same two again for columns of figures.
enum class FontRole { body, bodyStrong, figures, figuresStrong };

// Font families by role. The first family that has a character draws it: Noto Sans Math has the
// minus sign and other signs of arithmetic that Noto Sans lacks.
struct FontFamilies {
    std::vector<std::string> text = {"Noto Sans", "Noto Sans Math"};
    std::vector<std::string> figures = {"Noto Sans", "Noto Sans Math"};  // digits of one width
};

constexpr double mmPerPoint = 25.4 / 72;

class TextMeasurer {
public:
    virtual ~TextMeasurer() = default;

    // Widths add up: the width of two texts set side by side is the sum of theirs (no kerning).
    // Pre: valid UTF-8 without line breaks, size_pt > 0.
    virtual double width_mm(FontRole role, double size_pt, std::string_view utf8) const = 0;

    // Above and below the baseline, both positive.
    virtual double ascent_mm(FontRole role, double size_pt) const = 0;
    virtual double descent_mm(FontRole role, double size_pt) const = 0;

    // The first character that cannot be drawn.
    virtual std::optional<char32_t> missingGlyph(FontRole role, std::string_view utf8) const = 0;
};

}  // namespace rackbook
