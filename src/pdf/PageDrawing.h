// Draws the pages of one document.
#pragma once

#include <podofo/podofo.h>

#include <optional>
#include <string>
#include <vector>

#include "pdf/ContentMarks.h"
#include "pdf/ContentStream.h"
#include "pdf/FontsInUse.h"
#include "pdf/PicturesInUse.h"

namespace rackbook {

class PageDrawing {
public:
    // All must outlive it.
    PageDrawing(PoDoFo::PdfMemDocument& document, const PageModel& model, FontsInUse& fonts,
                PicturesInUse& pictures, ContentMarks& marks);

    // Adds the page to the document. Pre: the model was checked (see ModelCheck.h).
    void draw(const Page& page);

    // In their order.
    const std::vector<PoDoFo::PdfReference>& pages() const { return m_pages; }

private:
    // Why a thing that belongs to no element is there (ISO 32000-1, table 330).
    enum class Artifact { layout, pagination };

    template <typename Thing>
    void drawAll(const std::vector<Thing>& things, void (PageDrawing::*drawOne)(const Thing&));
    void drawSwatch(const Swatch& swatch);
    void drawRule(const Rule& rule);
    void drawCurve(const Curve& curve);
    void drawFill(const Fill& fill);
    void drawPicture(const Picture& picture);
    void drawText(const TextRun& run);
    void drawPiece(const PdfFonts::Piece& piece, double size_pt, double x_mm, double baselineY_mm);
    void partFromWordBefore(const TextRun& run);

    void belongTo(int element, Artifact otherwise);
    void endMarked();
    void cover(int element, const Box& box);
    PoDoFo::PdfReference labSpace();
    void addPage(const std::string& content);

    PoDoFo::PdfMemDocument& m_document;
    const PageModel& m_model;
    FontsInUse& m_fonts;
    PicturesInUse& m_pictures;
    ContentMarks& m_marks;
    std::vector<PoDoFo::PdfReference> m_pages;
    std::optional<PoDoFo::PdfReference> m_labSpace;
    // Where the text of an element ended so far.
    struct TextEnd {
        std::size_t page;
        double x_mm;
        double baselineY_mm;
        bool divided;  // after a hyphen, dash or slash between letters, where lines may break
    };
    std::vector<std::optional<TextEnd>> m_textEnds;

    // Of the page that is being drawn.
    ContentStream m_stream;
    struct Resources {
        PoDoFo::PdfDictionary fonts;
        PoDoFo::PdfDictionary pictures;
        PoDoFo::PdfDictionary spaces;
    } m_resources;
    struct Marked {
        int element;
        Artifact otherwise;
    };
    std::optional<Marked> m_marked;
};

}  // namespace rackbook
