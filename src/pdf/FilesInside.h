// Files that a document carries (ISO 32000-1, 7.11.4; ISO 19005-3, 6.8).
#pragma once

#include <podofo/podofo.h>

#include <string>
#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

// Puts the files into the document as the source of what it says, for tools that list them by
// name too. `created` as DocumentInfo has it. Pre: names are file names, each given once.
void putFilesInside(PoDoFo::PdfMemDocument& document, const std::vector<AssociatedFile>& files,
                    const std::string& created);

}  // namespace rackbook
