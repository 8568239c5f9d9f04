#include "pdf/PdfWriter.h"

#include <podofo/podofo.h>

#include <memory>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Sha256.h"
#include "pdf/GlyphSets.h"
#include "pdf/ModelCheck.h"
#include "pdf/PdfMetadata.h"
#include "pdf/SrgbProfile.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfObject;
using PoDoFo::PdfString;
using PoDoFo::PdfVariant;

PdfString unicodeString(const std::string& text) {
    return PdfString(reinterpret_cast<const PoDoFo::pdf_utf8*>(text.c_str()));
}

std::string number(double value) {
    return formatFixed(value, 3);
}

double points(double length_mm) {
    return length_mm / mmPerPoint;
}

// Draws the pages of one document.
class PageDrawing {
public:
    PageDrawing(PoDoFo::PdfMemDocument& document, const PdfFonts& fonts)
        : m_document(document), m_fonts(fonts), m_files(fonts.files().size(), nullptr) {}

    void draw(const Page& page, const PaperSize& paper) {
        m_height_mm = paper.height_mm;
        PoDoFo::PdfPage* sheet = m_document.CreatePage(
            PoDoFo::PdfRect(0, 0, points(paper.width_mm), points(paper.height_mm)));
        PoDoFo::PdfPainter painter;
        painter.SetPage(sheet);
        painter.SetPrecision(4);
        if (!page.swatches.empty())
            drawSwatches(painter, *sheet, page.swatches);
        for (const Rule& rule : page.rules)
            drawRule(painter, rule);
        for (const TextRun& run : page.texts)
            drawText(painter, run);
        painter.FinishPage();
    }

private:
    // Made when first used, so that the file holds no others. The library owns it and its encoding.
    PoDoFo::PdfFont* fontOf(std::size_t file) {
        if (!m_files[file]) {
            const char* path = m_fonts.files()[file].c_str();
            m_files[file] = m_document.CreateFontSubset(
                path, false, false, false, new PoDoFo::PdfIdentityEncoding(0, 0xFFFF, true), path);
        }
        return m_files[file];
    }

    std::string x(double x_mm) const { return number(points(x_mm)); }
    std::string y(double y_mm) const { return number(points(m_height_mm - y_mm)); }

    // ISO 32000-1, 8.6.5.4; the D50 white of ICC profiles.
    PoDoFo::PdfReference labSpace() {
        if (m_labSpace)
            return m_labSpace->Reference();
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
        m_labSpace = m_document.GetObjects().CreateObject(PdfVariant(space));
        return m_labSpace->Reference();
    }

    void drawSwatches(PoDoFo::PdfPainter& painter, PoDoFo::PdfPage& sheet,
                      const std::vector<Swatch>& swatches) {
        PdfDictionary spaces;
        spaces.AddKey("LabD50", labSpace());
        sheet.GetResources()->GetDictionary().AddKey("ColorSpace", spaces);
        for (const Swatch& swatch : swatches) {
            const std::string box = x(swatch.x_mm) + " " + y(swatch.y_mm + swatch.height_mm) + " " +
                                    number(points(swatch.width_mm)) + " " +
                                    number(points(swatch.height_mm)) + " re\n";
            painter.GetCanvas()->Append("/LabD50 cs " + number(swatch.colour.lightness) + " " +
                                        number(swatch.colour.a) + " " + number(swatch.colour.b) +
                                        " sc\n" + box + "f\n");
            if (swatch.outline_mm > 0)
                painter.GetCanvas()->Append("0 G " + number(points(swatch.outline_mm)) + " w\n" +
                                            box + "S\n");
        }
    }

    void drawRule(PoDoFo::PdfPainter& painter, const Rule& rule) const {
        painter.GetCanvas()->Append(number(rule.grey) + " G " + number(points(rule.width_mm)) +
                                    " w\n" + x(rule.fromX_mm) + " " + y(rule.fromY_mm) + " m " +
                                    x(rule.toX_mm) + " " + y(rule.toY_mm) + " l S\n");
    }

    void drawText(PoDoFo::PdfPainter& painter, const TextRun& run) {
        painter.SetGray(run.grey);
        double x_mm = run.x_mm;
        for (const PdfFonts::Piece& piece : m_fonts.pieces(run.role, run.text)) {
            PoDoFo::PdfFont* font = fontOf(piece.file);
            font->SetFontSize(static_cast<float>(run.size_pt));
            painter.SetFont(font);
            painter.DrawText(points(x_mm), points(m_height_mm - run.baselineY_mm),
                             unicodeString(piece.text));
            x_mm += m_fonts.width_mm(run.role, run.size_pt, piece.text);
        }
    }

    PoDoFo::PdfMemDocument& m_document;
    const PdfFonts& m_fonts;
    std::vector<PoDoFo::PdfFont*> m_files;
    PdfObject* m_labSpace = nullptr;
    double m_height_mm = 0;
};

void setUncompressed(PdfObject& object, const std::string& bytes) {
    object.GetStream()->Set(bytes.data(), static_cast<PoDoFo::pdf_long>(bytes.size()),
                            PoDoFo::TVecFilters());
}

void setInfo(PoDoFo::PdfMemDocument& document, const DocumentInfo& info) {
    PdfDictionary& dictionary = document.GetInfo()->GetObject()->GetDictionary();
    dictionary.Clear();
    const auto set = [&](const char* key, const std::string& value) {
        if (!value.empty())
            dictionary.AddKey(key, unicodeString(value));
    };
    set("Title", info.title);
    set("Author", info.author);
    set("Subject", info.subject);
    set("Keywords", info.keywords);
    set("Creator", info.program);
    set("Producer", info.program);
    const std::string date = pdfDate(info.created);
    dictionary.AddKey("CreationDate", PdfString(date));
    dictionary.AddKey("ModDate", PdfString(date));
}

void setMetadata(PoDoFo::PdfMemDocument& document, const DocumentInfo& info, PdfLevel level) {
    PdfObject* metadata = document.GetObjects().CreateObject("Metadata");
    metadata->GetDictionary().AddKey("Subtype", PdfName("XML"));
    setUncompressed(*metadata, xmpPacket(info, level));
    PdfDictionary& catalog = document.GetCatalog()->GetDictionary();
    catalog.AddKey("Metadata", metadata->Reference());
    if (!info.language.empty())
        catalog.AddKey("Lang", PdfString(info.language));
}

void setOutputIntent(PoDoFo::PdfMemDocument& document) {
    PdfObject* profile = document.GetObjects().CreateObject();
    profile->GetDictionary().AddKey("N", PdfVariant(static_cast<PoDoFo::pdf_int64>(3)));
    const std::string bytes = srgbProfile();
    profile->GetStream()->Set(bytes.data(), static_cast<PoDoFo::pdf_long>(bytes.size()));
    PdfObject* intent = document.GetObjects().CreateObject("OutputIntent");
    PdfDictionary& dictionary = intent->GetDictionary();
    dictionary.AddKey("S", PdfName("GTS_PDFA1"));
    dictionary.AddKey("OutputConditionIdentifier", PdfString("sRGB"));
    dictionary.AddKey("Info", PdfString("sRGB IEC61966-2.1"));
    dictionary.AddKey("DestOutputProfile", profile->Reference());
    PdfArray intents;
    intents.push_back(intent->Reference());
    document.GetCatalog()->GetDictionary().AddKey("OutputIntents", intents);
}

std::string bytesOf(PoDoFo::PdfMemDocument& document, PdfLevel level) {
    const bool isFirstPart = level == PdfLevel::a1b;
    document.EmbedSubsetFonts();
    if (isFirstPart)
        setExactGlyphSets(document);
    else
        dropGlyphSets(document);
    PoDoFo::PdfRefCountedBuffer buffer;
    PoDoFo::PdfOutputDevice device(&buffer);
    PoDoFo::PdfWriter writer(&document.GetObjects(), document.GetTrailer());
    writer.SetPdfVersion(isFirstPart ? PoDoFo::ePdfVersion_1_4 : PoDoFo::ePdfVersion_1_7);
    writer.SetWriteMode(PoDoFo::ePdfWriteMode_Clean);
    writer.Write(&device);
    return std::string(buffer.GetBuffer(), buffer.GetSize());
}

// The library makes the identifier from the Info dictionary alone. The one put in its place, of the
// same length, follows from every byte.
void identifyByContent(std::string& bytes) {
    constexpr std::size_t digits = 32;
    const std::string identifier = sha256(bytes).substr(0, digits);
    std::size_t at = bytes.rfind("/ID");
    for (int part = 0; part < 2 && at != std::string::npos; ++part) {
        at = bytes.find('<', at);
        if (at == std::string::npos || bytes.find('>', at) != at + digits + 1)
            break;
        bytes.replace(at + 1, digits, identifier);
        at += digits + 1;
        if (part == 1)
            return;
    }
    throw RenderError("PDF", "the file's identifier was not found",
                      "Report this fault of the program.");
}

std::string draw(const PageModel& model, const PdfFonts& fonts, PdfLevel level) {
    PoDoFo::PdfMemDocument document;
    setInfo(document, model.info);
    setMetadata(document, model.info, level);
    setOutputIntent(document);
    PageDrawing drawing(document, fonts);
    for (const Page& page : model.pages)
        drawing.draw(page, model.paper);
    return bytesOf(document, level);
}

}  // namespace

std::string writePdf(const PageModel& model, const PdfFonts& fonts, PdfLevel level) {
    checkModel(model, fonts);
    try {
        std::string bytes = draw(model, fonts, level);
        identifyByContent(bytes);
        return bytes;
    } catch (const PoDoFo::PdfError& error) {
        throw RenderError("PDF", std::string("the PDF library failed: ") + error.what(),
                          "Report this fault of the program.");
    }
}

}  // namespace rackbook
