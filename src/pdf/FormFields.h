// The interactive form of a document (ISO 32000-1, 12.7). Private to pdf/.
#pragma once

#include <podofo/podofo.h>

#include <vector>

#include "pdf/FontsInUse.h"
#include "sheets/PageModel.h"

namespace rackbook {

// What a page shows of a field, and the element of the structure that it belongs to.
struct FormWidget {
    std::size_t page = 0;
    int element = noElement;
    PoDoFo::PdfReference annotation;
};

// Writes the fields as a tree by the parts of their names. Each is its own widget, with its normal
// appearance, words for those who do not see it, and no action. What is typed is set in the font of
// body text, of which all Latin, Greek and Cyrillic letters are put into the file. Pre: the model
// was checked (see ModelCheck.h); `pages` in their order. In the order of the model.
std::vector<FormWidget> writeForm(PoDoFo::PdfMemDocument& document, const PageModel& model,
                                  FontsInUse& fonts,
                                  const std::vector<PoDoFo::PdfReference>& pages);

}  // namespace rackbook
