#include "pdf/StructureTree.h"

#include "base/Error.h"
#include "pdf/PdfValues.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfObject;
using PoDoFo::PdfReference;
using PoDoFo::PdfVariant;

class TreeWriting {
public:
    TreeWriting(PoDoFo::PdfMemDocument& document, const std::vector<StructureElement>& structure,
                const StructureOnPages& held)
        : m_objects(document.GetObjects()),
          m_structure(structure),
          m_marks(held.marks),
          m_pages(held.pages),
          m_height_mm(held.pageHeight_mm),
          m_widgets(held.widgets),
          m_widgetsOf(structure.size()) {
        for (const FormWidget& widget : m_widgets)
            m_widgetsOf[static_cast<std::size_t>(widget.element)].push_back(&widget);
    }

    // Gives the root.
    PdfReference write() {
        PdfObject* root = m_objects.CreateObject("StructTreeRoot");
        PdfObject* whole = m_objects.CreateObject("StructElem");
        whole->GetDictionary().AddKey("S", PdfName("Document"));
        whole->GetDictionary().AddKey("P", root->Reference());
        for (std::size_t i = 0; i < m_structure.size(); ++i)
            m_elements.push_back(m_objects.CreateObject("StructElem"));
        std::vector<PdfArray> kids(m_structure.size());
        PdfArray topmost;
        for (std::size_t i = 0; i < m_structure.size(); ++i)
            kids[i] = describe(i, *whole);
        for (std::size_t i = 0; i < m_structure.size(); ++i) {
            const int parent = m_structure[i].parent;
            PdfArray& siblings =
                parent == noElement ? topmost : kids[static_cast<std::size_t>(parent)];
            siblings.push_back(m_elements[i]->Reference());
        }
        for (std::size_t i = 0; i < m_structure.size(); ++i)
            if (!kids[i].empty())
                m_elements[i]->GetDictionary().AddKey("K", kids[i]);
        whole->GetDictionary().AddKey("K", topmost);
        root->GetDictionary().AddKey("K", whole->Reference());
        root->GetDictionary().AddKey("ParentTree", wayBack());
        root->GetDictionary().AddKey("ParentTreeNextKey",
                                     wholeNumber(m_pages.size() + m_widgets.size()));
        return root->Reference();
    }

private:
    // Everything but the children; gives the element's own content.
    PdfArray describe(std::size_t element, const PdfObject& whole) {
        const StructureElement& part = m_structure[element];
        PdfDictionary& dictionary = m_elements[element]->GetDictionary();
        dictionary.AddKey("S", PdfName(standardType(part.kind)));
        dictionary.AddKey("P",
                          part.parent == noElement
                              ? whole.Reference()
                              : m_elements[static_cast<std::size_t>(part.parent)]->Reference());
        if (!part.alternate.empty())
            dictionary.AddKey("Alt", unicodeString(part.alternate));
        const PdfDictionary attributes = attributesOf(element);
        if (!attributes.GetKeys().empty())
            dictionary.AddKey("A", attributes);
        const std::vector<ContentMark>& marks = m_marks.of(element);
        if (!marks.empty())
            dictionary.AddKey("Pg", m_pages[marks.front().page]);
        PdfArray content;
        for (const ContentMark& mark : marks)
            content.push_back(mark.page == marks.front().page ? wholeNumber(mark.number)
                                                              : elsewhere(mark));
        for (const FormWidget* widget : m_widgetsOf[element])
            content.push_back(shownBy(*widget));
        return content;
    }

    PdfObject shownBy(const FormWidget& widget) const {
        PdfDictionary reference;
        reference.AddKey("Type", PdfName("OBJR"));
        reference.AddKey("Pg", m_pages[widget.page]);
        reference.AddKey("Obj", widget.annotation);
        return PdfObject(PdfVariant(reference));
    }

    PdfObject elsewhere(const ContentMark& mark) const {
        PdfDictionary reference;
        reference.AddKey("Type", PdfName("MCR"));
        reference.AddKey("Pg", m_pages[mark.page]);
        reference.AddKey("MCID", wholeNumber(mark.number));
        return PdfObject(PdfVariant(reference));
    }

    PdfDictionary attributesOf(std::size_t element) const {
        const StructureElement& part = m_structure[element];
        PdfDictionary attributes;
        const bool isHeader = part.kind == ElementKind::headerCell;
        if (isHeader || (part.kind == ElementKind::dataCell && part.columns > 1)) {
            attributes.AddKey("O", PdfName("Table"));
            if (isHeader)
                attributes.AddKey("Scope", PdfName("Column"));
            if (part.columns > 1)
                attributes.AddKey("ColSpan", wholeNumber(static_cast<std::size_t>(part.columns)));
        }
        const std::optional<Box> extent = m_marks.extentOf(element);
        if (part.kind == ElementKind::figure && extent) {
            attributes.AddKey("O", PdfName("Layout"));
            attributes.AddKey("BBox", inPoints(*extent));
        }
        return attributes;
    }

    PdfArray inPoints(const Box& box) const {
        PdfArray edges;
        for (const double edge_mm : {box.x_mm, m_height_mm - box.y_mm - box.height_mm,
                                     box.x_mm + box.width_mm, m_height_mm - box.y_mm})
            edges.push_back(PdfVariant(edge_mm / mmPerPoint));
        return edges;
    }

    // A number tree from pages to the elements of their sequences, and from widgets to theirs; the
    // pages get their keys.
    PdfReference wayBack() {
        PdfArray numbers;
        for (std::size_t page = 0; page < m_pages.size(); ++page) {
            PdfArray elements;
            for (const std::size_t element : m_marks.pages()[page])
                elements.push_back(m_elements[element]->Reference());
            numbers.push_back(wholeNumber(page));
            numbers.push_back(m_objects.CreateObject(PdfVariant(elements))->Reference());
            PdfDictionary& dictionary = m_objects.GetObject(m_pages[page])->GetDictionary();
            dictionary.AddKey("StructParents", wholeNumber(page));
            dictionary.AddKey("Tabs", PdfName("S"));
        }
        for (std::size_t i = 0; i < m_widgets.size(); ++i) {
            numbers.push_back(wholeNumber(m_pages.size() + i));
            numbers.push_back(
                m_elements[static_cast<std::size_t>(m_widgets[i].element)]->Reference());
        }
        PdfObject* tree = m_objects.CreateObject();
        tree->GetDictionary().AddKey("Nums", numbers);
        return tree->Reference();
    }

    PoDoFo::PdfVecObjects& m_objects;
    const std::vector<StructureElement>& m_structure;
    const ContentMarks& m_marks;
    const std::vector<PdfReference>& m_pages;
    double m_height_mm;
    const std::vector<FormWidget>& m_widgets;
    std::vector<std::vector<const FormWidget*>> m_widgetsOf;  // by element
    std::vector<PdfObject*> m_elements;
};

}  // namespace

const char* standardType(ElementKind kind) {
    switch (kind) {
        case ElementKind::section:
            return "Sect";
        case ElementKind::title:
            return "H1";
        case ElementKind::heading:
            return "H2";
        case ElementKind::subheading:
            return "H3";
        case ElementKind::paragraph:
            return "P";
        case ElementKind::list:
            return "L";
        case ElementKind::listItem:
            return "LI";
        case ElementKind::listLabel:
            return "Lbl";
        case ElementKind::listBody:
            return "LBody";
        case ElementKind::table:
            return "Table";
        case ElementKind::tableRow:
            return "TR";
        case ElementKind::headerCell:
            return "TH";
        case ElementKind::dataCell:
            return "TD";
        case ElementKind::figure:
            return "Figure";
        case ElementKind::caption:
            return "Caption";
        case ElementKind::form:
            return "Form";
    }
    throw RenderError("page model", "an element is of an unknown kind",
                      "Report this fault of the program.");
}

void writeStructure(PoDoFo::PdfMemDocument& document,
                    const std::vector<StructureElement>& structure, const StructureOnPages& held) {
    PdfDictionary& catalog = document.GetCatalog()->GetDictionary();
    catalog.AddKey("StructTreeRoot", TreeWriting(document, structure, held).write());
    PdfDictionary tagged;
    tagged.AddKey("Marked", PdfObject(PdfVariant(true)));
    catalog.AddKey("MarkInfo", tagged);
}

}  // namespace rackbook
