// Draws a page model as a PDF file in memory.
#pragma once

#include <string>

#include "pdf/PdfFonts.h"
#include "sheets/PageModel.h"

namespace rackbook {

// PDF 1.7. Fonts are embedded as subsets with their Unicode values, swatches are drawn in CIELAB
// under D50, the file carries XMP metadata equal to its Info dictionary, an sRGB output intent and
// an identifier made from its content; the same model and fonts give the same bytes.
//
// Level: made after the rules of PDF/A-3b (ISO 19005-3) and marked so. No validator for part 3 was
// at hand: the rules are checked one by one by the tests. The file has no structure tree, so that
// the accessible level A is not reached; no files are associated yet.
//
// The fonts must be those the model was laid out with. Throws RenderError where the model has no
// pages, no title or no date, a number is no number, a colour lies outside its range, or a
// character cannot be drawn.
std::string writePdf(const PageModel& model, const PdfFonts& fonts);

}  // namespace rackbook
