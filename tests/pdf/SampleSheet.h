// A sheet with something of everything, for the tests of this room.
#pragma once

#include "pdf/PdfFonts.h"
#include "sheets/Flow.h"

namespace rackbook {

DocumentInfo sampleInfo();

// A long title, Greek, Cyrillic and diacritics, a table over three pages, swatches.
PageModel sampleSheet(const PdfFonts& fonts);

// One page with one paragraph.
PageModel shortSheet(const PdfFonts& fonts, const std::string& text);

}  // namespace rackbook
