// The structure of a document as a tree in the file (ISO 32000-1, 14.7 and 14.8). Private to pdf/.
#pragma once

#include <podofo/podofo.h>

#include <vector>

#include "pdf/ContentMarks.h"
#include "pdf/FormFields.h"

namespace rackbook {

// The name of the structure type, such as "P".
const char* standardType(ElementKind kind);

// What the pages hold of the elements.
struct StructureOnPages {
    const ContentMarks& marks;
    const std::vector<PoDoFo::PdfReference>& pages;  // those that the marks were made on, in order
    double pageHeight_mm = 0;
    const std::vector<FormWidget>& widgets;
};

// Writes the tree below one element for the whole document, the way back from pages and fields of
// a form to elements, and says that the file is tagged. Cells of headers have the scope of their
// column, cells tell over how many columns they reach, figures where they are. The number of a
// widget in that way back is its position after the pages. Pre: the structure is not empty, parents
// stand before their children.
void writeStructure(PoDoFo::PdfMemDocument& document,
                    const std::vector<StructureElement>& structure, const StructureOnPages& held);

}  // namespace rackbook
