#include "pdf/FieldAppearance.h"

#include <algorithm>

#include "pdf/ContentStream.h"
#include "pdf/PdfValues.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfVariant;

constexpr double margin_mm = 0.7;

PoDoFo::PdfReference streamOf(PoDoFo::PdfMemDocument& document, const Box& box,
                              const std::string& content, const PdfDictionary& fonts) {
    PoDoFo::PdfObject* form = document.GetObjects().CreateObject("XObject");
    PdfDictionary& dictionary = form->GetDictionary();
    dictionary.AddKey("Subtype", PdfName("Form"));
    PdfArray bounds;
    for (const double edge_mm : {0.0, 0.0, box.width_mm, box.height_mm})
        bounds.push_back(PdfVariant(edge_mm / mmPerPoint));
    dictionary.AddKey("BBox", bounds);
    PdfDictionary resources;
    if (!fonts.GetKeys().empty())
        resources.AddKey("Font", fonts);
    dictionary.AddKey("Resources", resources);
    setCompressed(*form, content);
    return form->Reference();
}

// One line, cut at the edge of the field, as programs do that fill in forms.
PoDoFo::PdfReference textIn(PoDoFo::PdfMemDocument& document, const FormField& field,
                            FontsInUse& fonts) {
    PdfDictionary used;
    ContentStream stream(field.box.height_mm);
    stream.operation("/Tx BMC");
    if (!field.value.empty()) {
        const double rise_mm = fonts.fonts().ascent_mm(FontRole::body, field.size_pt);
        const double drop_mm = fonts.fonts().descent_mm(FontRole::body, field.size_pt);
        const double baseline_mm = (field.box.height_mm + rise_mm - drop_mm) / 2;
        const Box inside = {margin_mm, 0, field.box.width_mm - 2 * margin_mm, field.box.height_mm};
        stream.operation("q").rectangle(inside).operation("W n").operation("BT").operation("0 g");
        stream.point(margin_mm, baseline_mm).operation("Td");
        for (const PdfFonts::Piece& piece : fonts.fonts().pieces(FontRole::body, field.value)) {
            PoDoFo::PdfFont& font = fonts.font(piece.file);
            used.AddKey(font.GetIdentifier(), font.GetObject()->Reference());
            stream.word("/" + font.GetIdentifier().GetName()).number(field.size_pt);
            stream.operation("Tf").word(fonts.glyphs(piece.file, piece.text)).operation("Tj");
        }
        stream.operation("ET Q");
    }
    stream.operation("EMC");
    return streamOf(document, field.box, stream.text(), used);
}

// A hook from left to right.
std::string tickIn(const Box& box) {
    ContentStream stream(box.height_mm);
    const double side = std::min(box.width_mm, box.height_mm);
    const auto at = [&](double x, double y) -> ContentStream& {
        return stream.point(x * side, y * side);
    };
    stream.operation("q").word("0 G 1 J 1 j").length(side / 8).operation("w");
    at(0.18, 0.52).operation("m");
    at(0.42, 0.78).operation("l");
    at(0.84, 0.2).operation("l");
    stream.operation("S Q");
    return stream.text();
}

}  // namespace

PdfDictionary appearanceOf(PoDoFo::PdfMemDocument& document, const FormField& field,
                           FontsInUse& fonts) {
    PdfDictionary appearance;
    if (field.kind != FormField::Kind::tick) {
        appearance.AddKey("N", textIn(document, field, fonts));
        return appearance;
    }
    PdfDictionary states;
    states.AddKey("Off", streamOf(document, field.box, "", {}));
    states.AddKey("on", streamOf(document, field.box, tickIn(field.box), {}));
    appearance.AddKey("N", states);
    return appearance;
}

}  // namespace rackbook
