#include "pdf/PdfFonts.h"

#include <podofo/podofo.h>

#include <algorithm>
#include <array>

#include "base/Error.h"
#include "base/Text.h"
#include "pdf/FontFinder.h"
#include "pdf/FontPermission.h"

namespace rackbook {

namespace {

constexpr float unitsPerEm = 1000;
constexpr char32_t lastDrawable = 0xFFFF;
constexpr std::size_t roleCount = 4;

// One file; what was looked up once is kept.
class Face {
public:
    Face(FT_Library library, const std::string& path)
        : m_metrics(&library, path.c_str(), false), m_advances(lastDrawable + 1, notLookedUp) {
        m_metrics.SetFontSize(unitsPerEm);
        m_metrics.SetFontScale(100);
        m_metrics.SetFontCharSpace(0);
    }

    bool has(char32_t character) { return advance(character) != missing; }

    // In thousandths of an em, 0 for a character that it lacks.
    double width(char32_t character) { return std::max(0.0f, advance(character)); }

    double ascent() const { return m_metrics.GetPdfAscent(); }
    double descent() const { return -m_metrics.GetPdfDescent(); }

private:
    static constexpr float notLookedUp = -2;
    static constexpr float missing = -1;

    float advance(char32_t character) {
        if (character > lastDrawable)
            return missing;
        float& known = m_advances[character];
        if (known == notLookedUp)
            known = m_metrics.GetGlyphId(static_cast<long>(character)) == 0
                        ? missing
                        : static_cast<float>(
                              m_metrics.UnicodeCharWidth(static_cast<unsigned short>(character)));
        return known;
    }

    PoDoFo::PdfFontMetricsFreetype m_metrics;
    std::vector<float> m_advances;
};

}  // namespace

struct PdfFonts::Faces {
    // Only lends its font library.
    PoDoFo::PdfMemDocument document;
    std::vector<std::string> paths;
    std::vector<std::unique_ptr<Face>> faces;
    std::array<std::vector<std::size_t>, roleCount> chains;

    std::size_t open(const std::string& path) {
        const auto known = std::find(paths.begin(), paths.end(), path);
        if (known != paths.end())
            return static_cast<std::size_t>(known - paths.begin());
        requireEmbeddable(path);
        try {
            faces.push_back(std::make_unique<Face>(document.GetFontLibrary(), path));
        } catch (const PoDoFo::PdfError&) {
            throw RenderError(path, "the font file cannot be read", "Install its package again.");
        }
        paths.push_back(path);
        return paths.size() - 1;
    }

    void openChain(FontRole role, const std::vector<std::string>& families, FontWeight weight) {
        chain(role).push_back(open(requireFontFile(families.front(), weight)));
        for (std::size_t i = 1; i < families.size(); ++i) {
            const auto path = findFontFile(families[i], weight);
            chain(role).push_back(
                open(path ? *path : requireFontFile(families[i], FontWeight::regular)));
        }
    }

    std::vector<std::size_t>& chain(FontRole role) {
        return chains[static_cast<std::size_t>(role)];
    }

    std::size_t fileFor(FontRole role, char32_t character) {
        const std::vector<std::size_t>& files = chain(role);
        for (const std::size_t file : files)
            if (faces[file]->has(character))
                return file;
        return files.front();
    }

    Face& firstFace(FontRole role) { return *faces[chain(role).front()]; }
};

PdfFonts::PdfFonts(const FontFamilies& families) {
    PoDoFo::PdfError::EnableDebug(false);
    PoDoFo::PdfError::EnableLogging(false);
    if (families.text.empty() || families.figures.empty())
        throw RenderError("fonts", "a role has no font family",
                          "Name at least one family for text and for figures.");
    m_faces = std::make_unique<Faces>();
    m_faces->openChain(FontRole::body, families.text, FontWeight::regular);
    m_faces->openChain(FontRole::bodyStrong, families.text, FontWeight::bold);
    m_faces->openChain(FontRole::figures, families.figures, FontWeight::regular);
    m_faces->openChain(FontRole::figuresStrong, families.figures, FontWeight::bold);
}

PdfFonts::~PdfFonts() = default;

double PdfFonts::width_mm(FontRole role, double size_pt, std::string_view utf8) const {
    double width = 0;
    for (const char32_t c : codePoints(utf8))
        width += m_faces->faces[m_faces->fileFor(role, c)]->width(c);
    return width / static_cast<double>(unitsPerEm) * size_pt * mmPerPoint;
}

double PdfFonts::ascent_mm(FontRole role, double size_pt) const {
    return m_faces->firstFace(role).ascent() / 1000 * size_pt * mmPerPoint;
}

double PdfFonts::descent_mm(FontRole role, double size_pt) const {
    return m_faces->firstFace(role).descent() / 1000 * size_pt * mmPerPoint;
}

std::optional<char32_t> PdfFonts::missingGlyph(FontRole role, std::string_view utf8) const {
    for (const char32_t c : codePoints(utf8))
        if (!m_faces->faces[m_faces->fileFor(role, c)]->has(c))
            return c;
    return std::nullopt;
}

const std::vector<std::string>& PdfFonts::files() const {
    return m_faces->paths;
}

std::vector<PdfFonts::Piece> PdfFonts::pieces(FontRole role, std::string_view utf8) const {
    std::vector<Piece> pieces;
    std::size_t at = 0;
    for (const char32_t c : codePoints(utf8)) {
        const std::size_t length = offsetOfCodePoint(utf8.substr(at), 1);
        const std::size_t file = m_faces->fileFor(role, c);
        if (pieces.empty() || pieces.back().file != file)
            pieces.push_back({file, {}});
        pieces.back().text += utf8.substr(at, length);
        at += length;
    }
    return pieces;
}

}  // namespace rackbook
