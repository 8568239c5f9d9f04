#include "pdf/PdfWriter.h"

#include <podofo/podofo.h>

#include <memory>

#include "base/Error.h"
#include "base/Sha256.h"
#include "pdf/FilesInside.h"
#include "pdf/FormFields.h"
#include "pdf/GlyphSets.h"
#include "pdf/ModelCheck.h"
#include "pdf/PageDrawing.h"
#include "pdf/PdfMetadata.h"
#include "pdf/PdfValues.h"
#include "pdf/SrgbProfile.h"
#include "pdf/StructureTree.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfObject;
using PoDoFo::PdfString;

void setInfo(PoDoFo::PdfMemDocument& document, const DocumentInfo& info) {
    PdfDictionary& dictionary = document.GetInfo()->GetObject()->GetDictionary();
    dictionary.Clear();
    const auto set = [&](const char* key, const std::string& value) {
        if (!value.empty())
            dictionary.AddKey(key, hexadecimalString(value));
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
    profile->GetDictionary().AddKey("N", wholeNumber(3));
    setCompressed(*profile, srgbProfile());
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
    FontsInUse fontsInUse(document, fonts);
    PicturesInUse pictures(document, model.pictures);
    ContentMarks marks(model.structure.size());
    PageDrawing drawing(document, model, fontsInUse, pictures, marks);
    for (const Page& page : model.pages)
        drawing.draw(page);
    const std::vector<FormWidget> widgets = writeForm(document, model, fontsInUse, drawing.pages());
    if (!model.structure.empty())
        writeStructure(document, model.structure,
                       {marks, drawing.pages(), model.paper.height_mm, widgets});
    if (level == PdfLevel::a3b)
        putFilesInside(document, model.files, model.info.created);
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
