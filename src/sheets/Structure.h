// What the parts of a sheet are: headings, tables, figures, so that a reading aloud, or a reader of
// the file that does not see, follows them.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

constexpr int noElement = -1;

// Each is a standard structure type of ISO 32000-1, 14.8.4.
enum class ElementKind {
    section,
    title,       // H1
    heading,     // H2, a section's
    subheading,  // H3
    paragraph,
    list,
    listItem,
    listLabel,
    listBody,
    table,
    tableRow,
    headerCell,  // of a column
    dataCell,
    figure,
    caption,
    form  // a field of the file's form
};

struct StructureElement {
    ElementKind kind = ElementKind::paragraph;
    int parent = noElement;  // position in the structure; noElement at the top
    std::string alternate;   // what a figure shows, in words
    int columns = 1;         // that a cell reaches across
};

// Grows a structure while a sheet is laid out.
class StructureBuilder {
public:
    int add(ElementKind kind, int parent = noElement, std::string alternate = {}) {
        m_elements.push_back({kind, parent, std::move(alternate), 1});
        return static_cast<int>(m_elements.size()) - 1;
    }

    int addCell(ElementKind kind, int row, int columns) {
        const int cell = add(kind, row);
        m_elements.back().columns = columns;
        return cell;
    }

    std::vector<StructureElement> take() { return std::move(m_elements); }

private:
    std::vector<StructureElement> m_elements;
};

}  // namespace rackbook
