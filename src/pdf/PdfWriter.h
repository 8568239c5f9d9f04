// Draws a page model as a PDF file in memory.
#pragma once

#include <string>

#include "pdf/PdfFonts.h"
#include "pdf/PdfLevel.h"
#include "sheets/PageModel.h"

namespace rackbook {

// Fonts are embedded as subsets with their Unicode values, swatches are drawn in CIELAB
// under D50, the file carries XMP metadata equal to its Info dictionary, an sRGB output intent and
// an identifier made from its content; the same model and fonts give the same bytes.
//
// Level: made after the rules of PDF/A-3b (ISO 19005-3) and marked so, or of PDF/A-1b where that is
// asked for. No validator for part 3 was at hand: its rules are checked one by one by the tests;
// files after part 1 pass a validator of others there. The file has no structure tree, so that
// the accessible level A is not reached; no files are associated yet.
//
// The fonts must be those the model was laid out with. Throws RenderError where the model has no
// pages, no title or no date, a number is no number, a colour lies outside its range, or a
// character cannot be drawn.
std::string writePdf(const PageModel& model, const PdfFonts& fonts, PdfLevel level = PdfLevel::a3b);

}  // namespace rackbook
