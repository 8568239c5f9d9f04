#include "pdf/FormFields.h"

#include <map>
#include <string>

#include "base/Numbers.h"
#include "base/Utf8.h"
#include "pdf/FieldAppearance.h"
#include "pdf/PdfValues.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfObject;
using PoDoFo::PdfReference;
using PoDoFo::PdfVariant;

// ISO 32000-1, tables 221, 228 and 230.
enum FieldFlag : std::size_t { severalLines = 1U << 12, comboBox = 1U << 17, ownWords = 1U << 18 };
constexpr std::size_t isPrinted = 1U << 2;  // of an annotation, table 165

struct Letters {
    char32_t first;
    char32_t last;
};

// Latin, Greek and Cyrillic letters, figures, and the signs that come between; no second space.
constexpr Letters typedLetters[] = {{0x0020, 0x007E}, {0x00A1, 0x024F}, {0x0370, 0x03FF},
                                    {0x0400, 0x052F}, {0x1E00, 0x1EFF}, {0x2010, 0x2027},
                                    {0x2030, 0x203A}, {0x20AC, 0x20AC}};

class FormWriting {
public:
    FormWriting(PoDoFo::PdfMemDocument& document, const PageModel& model, FontsInUse& fonts,
                const std::vector<PdfReference>& pages)
        : m_document(document),
          m_model(model),
          m_fonts(fonts),
          m_pages(pages),
          m_annotations(pages.size()) {}

    std::vector<FormWidget> write() {
        typingFont();
        PdfObject* form = m_document.GetObjects().CreateObject();
        std::vector<FormWidget> widgets;
        for (const FormField& field : m_model.form) {
            const PdfReference annotation = fieldOf(field, widgets.size());
            widgets.push_back({field.page, field.element, annotation});
        }
        describe(*form);
        m_document.GetCatalog()->GetDictionary().AddKey("AcroForm", form->Reference());
        for (std::size_t page = 0; page < m_pages.size(); ++page)
            if (!m_annotations[page].empty())
                m_document.GetObjects()
                    .GetObject(m_pages[page])
                    ->GetDictionary()
                    .AddKey("Annots", m_annotations[page]);
        return widgets;
    }

private:
    // A part of names that several fields share.
    struct Node {
        PdfObject* object = nullptr;
        PdfArray kids;
    };

    // Draws nothing, but puts the letters down for the subset.
    void typingFont() {
        const PdfFonts& fonts = m_fonts.fonts();
        m_file = fonts.pieces(FontRole::body, "a").front().file;
        for (const Letters& letters : typedLetters)
            for (char32_t c = letters.first; c <= letters.last; ++c) {
                std::string letter;
                appendUtf8(letter, c);
                const bool isDrawn = !fonts.missingGlyph(FontRole::body, letter) &&
                                     fonts.pieces(FontRole::body, letter).front().file == m_file;
                if (isDrawn)
                    m_fonts.glyphs(m_file, letter);
            }
    }

    std::string look(double size_pt) const {
        return "0 g /" + m_fonts.font(m_file).GetIdentifier().GetName() + " " +
               formatShortest(size_pt) + " Tf";
    }

    PdfReference fieldOf(const FormField& field, std::size_t number) {
        PdfObject* object = m_document.GetObjects().CreateObject("Annot");
        PdfDictionary& dictionary = object->GetDictionary();
        dictionary.AddKey("Subtype", PdfName("Widget"));
        dictionary.AddKey("Rect", rectangleOf(field.box));
        dictionary.AddKey("F", wholeNumber(isPrinted));
        dictionary.AddKey("P", m_pages[field.page]);
        dictionary.AddKey("StructParent", wholeNumber(m_pages.size() + number));
        dictionary.AddKey("TU", unicodeString(field.tooltip));
        dictionary.AddKey("AP", appearanceOf(m_document, field, m_fonts));
        setValue(dictionary, field);
        const std::size_t point = field.name.rfind('.');
        dictionary.AddKey("T", unicodeString(field.name.substr(point + 1)));
        if (point != std::string::npos)
            dictionary.AddKey("Parent", nodeOf(field.name.substr(0, point)).object->Reference());
        kidsOf(field.name).push_back(object->Reference());
        m_annotations[field.page].push_back(object->Reference());
        return object->Reference();
    }

    void setValue(PdfDictionary& dictionary, const FormField& field) const {
        if (field.kind == FormField::Kind::tick) {
            const PdfName state(field.value.empty() ? "Off" : "on");
            dictionary.AddKey("FT", PdfName("Btn"));
            dictionary.AddKey("V", state);
            dictionary.AddKey("AS", state);
            return;
        }
        const bool isChoice = field.kind == FormField::Kind::choice;
        dictionary.AddKey("FT", PdfName(isChoice ? "Ch" : "Tx"));
        dictionary.AddKey("DA", PoDoFo::PdfString(look(field.size_pt)));
        if (!field.value.empty())
            dictionary.AddKey("V", unicodeString(field.value));
        if (isChoice) {
            dictionary.AddKey("Ff", wholeNumber(comboBox | ownWords));
            PdfArray choices;
            for (const std::string& choice : field.choices)
                choices.push_back(unicodeString(choice));
            dictionary.AddKey("Opt", choices);
        } else if (field.kind == FormField::Kind::lines) {
            dictionary.AddKey("Ff", wholeNumber(severalLines));
            dictionary.AddKey("MK", paperBehind());
        }
    }

    // Programs that set what is typed anew cover the printed lines with it.
    static PdfDictionary paperBehind() {
        PdfArray white;
        white.push_back(wholeNumber(1));
        PdfDictionary marks;
        marks.AddKey("BG", white);
        return marks;
    }

    PdfArray rectangleOf(const Box& box) const {
        const double height_mm = m_model.paper.height_mm;
        PdfArray edges;
        for (const double edge_mm : {box.x_mm, height_mm - box.y_mm - box.height_mm,
                                     box.x_mm + box.width_mm, height_mm - box.y_mm})
            edges.push_back(PdfVariant(edge_mm / mmPerPoint));
        return edges;
    }

    // Where fields and nodes of that name are listed.
    PdfArray& kidsOf(const std::string& name) {
        const std::size_t point = name.rfind('.');
        return point == std::string::npos ? m_topmost : nodeOf(name.substr(0, point)).kids;
    }

    Node& nodeOf(const std::string& name) {
        const auto known = m_nodes.find(name);
        if (known != m_nodes.end())
            return known->second;
        Node node;
        node.object = m_document.GetObjects().CreateObject();
        const std::size_t point = name.rfind('.');
        PdfDictionary& dictionary = node.object->GetDictionary();
        dictionary.AddKey("T",
                          unicodeString(name.substr(point == std::string::npos ? 0 : point + 1)));
        if (point != std::string::npos)
            dictionary.AddKey("Parent", nodeOf(name.substr(0, point)).object->Reference());
        kidsOf(name).push_back(node.object->Reference());
        return m_nodes.emplace(name, std::move(node)).first->second;
    }

    void describe(PdfObject& form) {
        for (const auto& [name, node] : m_nodes)
            node.object->GetDictionary().AddKey("Kids", node.kids);
        PdfDictionary fonts;
        PoDoFo::PdfFont& font = m_fonts.font(m_file);
        fonts.AddKey(font.GetIdentifier(), font.GetObject()->Reference());
        PdfDictionary resources;
        resources.AddKey("Font", fonts);
        form.GetDictionary().AddKey("DR", resources);
        form.GetDictionary().AddKey("DA", PoDoFo::PdfString(look(m_model.form.front().size_pt)));
        form.GetDictionary().AddKey("Fields", m_topmost);
    }

    PoDoFo::PdfMemDocument& m_document;
    const PageModel& m_model;
    FontsInUse& m_fonts;
    const std::vector<PdfReference>& m_pages;
    std::vector<PdfArray> m_annotations;  // by page
    std::map<std::string, Node> m_nodes;
    PdfArray m_topmost;
    std::size_t m_file = 0;
};

}  // namespace

std::vector<FormWidget> writeForm(PoDoFo::PdfMemDocument& document, const PageModel& model,
                                  FontsInUse& fonts, const std::vector<PdfReference>& pages) {
    if (model.form.empty())
        return {};
    return FormWriting(document, model, fonts, pages).write();
}

}  // namespace rackbook
