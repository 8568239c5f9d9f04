// The font files of a sheet and their real widths.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sheets/TextMeasurer.h"

namespace rackbook {

// Opens the regular and the bold file of each family. Where a family lacks a character, the next
// family of the role draws it; families after the first, which lend single characters, may come in
// the regular weight alone, which then draws strong text too. Characters above U+FFFF count as
// missing, because the writer cannot draw them. Not for use by two threads at once.
class PdfFonts : public TextMeasurer {
public:
    // Throws RenderError for a family that is not on this machine, a file that cannot be read, and
    // a font that may not be put into documents.
    explicit PdfFonts(const FontFamilies& families = {});
    ~PdfFonts() override;
    PdfFonts(const PdfFonts&) = delete;
    PdfFonts& operator=(const PdfFonts&) = delete;

    double width_mm(FontRole role, double size_pt, std::string_view utf8) const override;
    double ascent_mm(FontRole role, double size_pt) const override;
    double descent_mm(FontRole role, double size_pt) const override;
    std::optional<char32_t> missingGlyph(FontRole role, std::string_view utf8) const override;

    // Paths of the files, each once.
    const std::vector<std::string>& files() const;

    // The text in pieces that one file draws; a character that no file has falls to the first.
    struct Piece {
        std::size_t file = 0;  // index into files()
        std::string text;
    };
    std::vector<Piece> pieces(FontRole role, std::string_view utf8) const;

private:
    struct Faces;
    std::unique_ptr<Faces> m_faces;
};

}  // namespace rackbook
