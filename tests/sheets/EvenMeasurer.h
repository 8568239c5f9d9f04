// Every character half an em wide, combining marks none, up to U+04FF and a few signs: widths that
// can be worked out in the head.
#pragma once

#include "base/Text.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

class EvenMeasurer : public TextMeasurer {
public:
    double width_mm(FontRole, double size_pt, std::string_view utf8) const override {
        double width = 0;
        for (const char32_t c : codePoints(utf8))
            width += c >= 0x0300 && c <= 0x036F ? 0 : 0.5;
        return width * size_pt * mmPerPoint;
    }
    double ascent_mm(FontRole, double size_pt) const override { return 0.8 * size_pt * mmPerPoint; }
    double descent_mm(FontRole, double size_pt) const override {
        return 0.2 * size_pt * mmPerPoint;
    }
    std::optional<char32_t> missingGlyph(FontRole, std::string_view utf8) const override {
        for (const char32_t c : codePoints(utf8))
            if (c > 0x04FF && c != 0x2013 && c != 0x2009 && c != 0x202F &&
                !(c >= 0x4E00 && c <= 0x9FFF))
                return c;
        return std::nullopt;
    }
};

}  // namespace rackbook
