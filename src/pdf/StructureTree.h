// The structure of a document as a tree in the file (ISO 32000-1, 14.7 and 14.8).
#pragma once

#include <podofo/podofo.h>

#include <vector>

#include "pdf/ContentMarks.h"

namespace rackbook {

// The name of the structure type, such as "P".
const char* standardType(ElementKind kind);

// Writes the tree below one element for the whole document, the way back from pages to elements,
// and says that the file is tagged. Cells of headers have the scope of their column, cells tell
// over how many columns they reach, figures where they are. Pre: the structure is not empty,
// parents stand before their children; `pages` are those that the marks were made on, in order.
void writeStructure(PoDoFo::PdfMemDocument& document,
                    const std::vector<StructureElement>& structure, const ContentMarks& marks,
                    const std::vector<PoDoFo::PdfReference>& pages, double pageHeight_mm);

}  // namespace rackbook
