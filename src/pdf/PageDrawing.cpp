#include "pdf/PageDrawing.h"

#include <algorithm>
#include <cmath>

#include "pdf/PdfValues.h"
#include "pdf/StructureTree.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfVariant;

Box around(const std::vector<PagePoint>& points, double width_mm) {
    const auto [left, right] = std::minmax_element(
        points.begin(), points.end(), [](const auto& a, const auto& b) { return a.x_mm < b.x_mm; });
    const auto [top, bottom] = std::minmax_element(
        points.begin(), points.end(), [](const auto& a, const auto& b) { return a.y_mm < b.y_mm; });
    return {left->x_mm - width_mm / 2, top->y_mm - width_mm / 2,
            right->x_mm - left->x_mm + width_mm, bottom->y_mm - top->y_mm + width_mm};
}

// ISO 32000-1, 8.6.5.4; the D50 white of ICC profiles.
PdfArray labSpaceD50() {
    PdfArray white;
    for (const double part : {0.9642, 1.0, 0.8249})
        white.push_back(PdfVariant(part));
    PdfArray range;
    for (const int end : {-160, 160, -160, 160})
        range.push_back(PdfVariant(static_cast<PoDoFo::pdf_int64>(end)));
    PdfDictionary parameters;
    parameters.AddKey("WhitePoint", white);
    parameters.AddKey("Range", range);
    PdfArray space;
    space.push_back(PdfName("Lab"));
    space.push_back(parameters);
    return space;
}

// Whether a line that ends so may go on without a space (see LineBreaker.h).
bool endsDivided(const std::string& text) {
    for (const char* divider : {"-", "/", "\u2010", "\u2013", "\u2014"}) {
        const std::string_view end(divider);
        if (text.size() > end.size() &&
            text.compare(text.size() - end.size(), end.size(), end) == 0)
            return text[text.size() - end.size() - 1] != ' ';
    }
    return false;
}

}  // namespace

PageDrawing::PageDrawing(PoDoFo::PdfMemDocument& document, const PageModel& model,
                         FontsInUse& fonts, PicturesInUse& pictures, ContentMarks& marks)
    : m_document(document),
      m_model(model),
      m_fonts(fonts),
      m_pictures(pictures),
      m_marks(marks),
      m_textEnds(model.structure.size()),
      m_stream(model.paper.height_mm) {}

void PageDrawing::draw(const Page& page) {
    m_stream = ContentStream(m_model.paper.height_mm);
    m_resources = {};
    m_marks.startPage();
    drawAll(page.swatches, &PageDrawing::drawSwatch);
    drawAll(page.fills, &PageDrawing::drawFill);
    drawAll(page.pictures, &PageDrawing::drawPicture);
    drawAll(page.rules, &PageDrawing::drawRule);
    drawAll(page.curves, &PageDrawing::drawCurve);
    drawAll(page.texts, &PageDrawing::drawText);
    endMarked();
    addPage(m_stream.text());
}

template <typename Thing>
void PageDrawing::drawAll(const std::vector<Thing>& things,
                          void (PageDrawing::*drawOne)(const Thing&)) {
    constexpr bool isText = std::is_same_v<Thing, TextRun>;
    for (const Thing& thing : things) {
        belongTo(thing.element, isText ? Artifact::pagination : Artifact::layout);
        (this->*drawOne)(thing);
    }
}

void PageDrawing::drawSwatch(const Swatch& swatch) {
    m_resources.spaces.AddKey("LabD50", labSpace());
    const Box box{swatch.x_mm, swatch.y_mm, swatch.width_mm, swatch.height_mm};
    m_stream.word("/LabD50 cs")
        .number(swatch.colour.lightness)
        .number(swatch.colour.a)
        .number(swatch.colour.b)
        .operation("sc");
    m_stream.rectangle(box).operation("f");
    if (swatch.outline_mm > 0)
        m_stream.word("0 G").length(swatch.outline_mm).operation("w").rectangle(box).operation("S");
    cover(swatch.element, box);
}

void PageDrawing::drawRule(const Rule& rule) {
    m_stream.number(rule.grey).word("G").length(rule.width_mm).operation("w");
    m_stream.point(rule.fromX_mm, rule.fromY_mm).word("m");
    m_stream.point(rule.toX_mm, rule.toY_mm).operation("l S");
    cover(rule.element,
          around({{rule.fromX_mm, rule.fromY_mm}, {rule.toX_mm, rule.toY_mm}}, rule.width_mm));
}

void PageDrawing::drawCurve(const Curve& curve) {
    m_stream.operation("q").number(curve.grey).word("G").length(curve.width_mm).word("w");
    if (curve.dash_mm > 0)
        m_stream.word("[").length(curve.dash_mm).word("] 0 d");
    m_stream.operation("1 j");
    const char* step = "m";
    for (const PagePoint& point : curve.points) {
        m_stream.point(point.x_mm, point.y_mm).operation(step);
        step = "l";
    }
    m_stream.operation("S Q");
    cover(curve.element, around(curve.points, curve.width_mm));
}

void PageDrawing::drawFill(const Fill& fill) {
    m_stream.number(fill.grey).operation("g");
    for (const Box& box : fill.boxes) {
        m_stream.rectangle(box);
        cover(fill.element, box);
    }
    m_stream.operation("f");
}

void PageDrawing::drawPicture(const Picture& picture) {
    const std::string name = "P" + std::to_string(picture.file);
    m_resources.pictures.AddKey(PdfName(name), m_pictures.reference(picture.file));
    m_stream.operation("q");
    placePicture(m_stream, picture.box, m_model.pictures[picture.file].orientation);
    m_stream.word("/" + name).operation("Do Q");
    cover(picture.element, picture.box);
}

void PageDrawing::drawText(const TextRun& run) {
    const PdfFonts& fonts = m_fonts.fonts();
    m_stream.word("BT").number(run.grey).operation("g");
    partFromWordBefore(run);
    double x_mm = run.x_mm;
    for (const PdfFonts::Piece& piece : fonts.pieces(run.role, run.text)) {
        drawPiece(piece, run.size_pt, x_mm, run.baselineY_mm);
        x_mm += fonts.width_mm(run.role, run.size_pt, piece.text);
    }
    m_stream.operation("ET");
    const double ascent_mm = fonts.ascent_mm(run.role, run.size_pt);
    cover(run.element, {run.x_mm, run.baselineY_mm - ascent_mm, x_mm - run.x_mm,
                        ascent_mm + fonts.descent_mm(run.role, run.size_pt)});
    if (run.element != noElement)
        m_textEnds[static_cast<std::size_t>(run.element)] = {m_pages.size(), x_mm, run.baselineY_mm,
                                                             endsDivided(run.text)};
}

void PageDrawing::drawPiece(const PdfFonts::Piece& piece, double size_pt, double x_mm,
                            double baselineY_mm) {
    const std::string name = "F" + std::to_string(piece.file);
    m_resources.fonts.AddKey(PdfName(name), m_fonts.font(piece.file).GetObject()->Reference());
    m_stream.word("/" + name).number(size_pt).word("Tf 1 0 0 1").point(x_mm, baselineY_mm);
    m_stream.word("Tm").word(m_fonts.glyphs(piece.file, piece.text)).operation("Tj");
}

// The spaces at which lines were broken are not in the runs; without them a reading aloud would
// run words together (ISO 32000-1, 14.8.2.5).
void PageDrawing::partFromWordBefore(const TextRun& run) {
    if (run.element == noElement)
        return;
    const std::optional<TextEnd>& before = m_textEnds[static_cast<std::size_t>(run.element)];
    constexpr double touching_mm = 0.05;
    const bool goesOn = before && before->page == m_pages.size() &&
                        before->baselineY_mm == run.baselineY_mm &&
                        std::abs(before->x_mm - run.x_mm) < touching_mm;
    if (!before || before->divided || goesOn)
        return;
    const double width_mm = m_fonts.fonts().width_mm(run.role, run.size_pt, " ");
    for (const PdfFonts::Piece& space : m_fonts.fonts().pieces(run.role, " "))
        drawPiece(space, run.size_pt, run.x_mm - width_mm, run.baselineY_mm);
}

// Neighbours that belong to the same element share a sequence.
void PageDrawing::belongTo(int element, Artifact otherwise) {
    if (m_model.structure.empty())
        return;
    if (m_marked && m_marked->element == element &&
        (element != noElement || m_marked->otherwise == otherwise))
        return;
    endMarked();
    m_marked = Marked{element, otherwise};
    if (element == noElement) {
        m_stream.operation(otherwise == Artifact::pagination ? "/Artifact <</Type /Pagination>> BDC"
                                                             : "/Artifact <</Type /Layout>> BDC");
        return;
    }
    const auto position = static_cast<std::size_t>(element);
    m_stream.word(std::string("/") + standardType(m_model.structure[position].kind) + " <</MCID " +
                  std::to_string(m_marks.add(position)) + ">>");
    m_stream.operation("BDC");
}

void PageDrawing::endMarked() {
    if (m_marked)
        m_stream.operation("EMC");
    m_marked.reset();
}

void PageDrawing::cover(int element, const Box& box) {
    if (!m_model.structure.empty() && element != noElement)
        m_marks.cover(static_cast<std::size_t>(element), box);
}

PoDoFo::PdfReference PageDrawing::labSpace() {
    if (!m_labSpace)
        m_labSpace = m_document.GetObjects().CreateObject(PdfVariant(labSpaceD50()))->Reference();
    return *m_labSpace;
}

void PageDrawing::addPage(const std::string& content) {
    PoDoFo::PdfPage* page = m_document.CreatePage(PoDoFo::PdfRect(
        0, 0, m_model.paper.width_mm / mmPerPoint, m_model.paper.height_mm / mmPerPoint));
    PdfDictionary& resources = page->GetResources()->GetDictionary();
    const auto add = [&](const char* key, const PdfDictionary& entries) {
        if (!entries.GetKeys().empty())
            resources.AddKey(key, entries);
    };
    add("Font", m_resources.fonts);
    add("XObject", m_resources.pictures);
    add("ColorSpace", m_resources.spaces);
    PoDoFo::PdfObject* stream = m_document.GetObjects().CreateObject();
    setCompressed(*stream, content);
    page->GetObject()->GetDictionary().AddKey("Contents", stream->Reference());
    m_pages.push_back(page->GetObject()->Reference());
}

}  // namespace rackbook
