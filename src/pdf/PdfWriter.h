// Draws a page model as a PDF file in memory.
#pragma once

#include <string>

#include "pdf/PdfFonts.h"
#include "pdf/PdfLevel.h"
#include "sheets/PageModel.h"

namespace rackbook {

// PDF 1.7. Fonts are embedded as subsets with their Unicode values, swatches are drawn in CIELAB
// under D50, JPEG files are held byte for byte, the file carries XMP metadata equal to its Info
// dictionary, an sRGB output intent and an identifier made from its content; the same model and
// fonts give the same bytes. A model with a structure makes a tagged file (ISO 32000-1, 14.8): all
// that is drawn belongs to an element or is marked as an artifact, words broken over lines are
// parted by spaces, header cells have a scope, figures have words and a place. The model's files
// are inside as the source of the document (ISO 19005-3, 6.8).
//
// Level: made after the rules of PDF/A-3b (ISO 19005-3) and marked so, or of PDF/A-1b, without
// files inside, where that is asked for. No validator for part 3 was at hand: its rules are checked
// one by one by the tests; files after part 1 pass a validator of others there. The accessible
// level A is not claimed: it asks that tags mean what a reader sees, which no test here can judge,
// and for its other rules too no validator was at hand.
//
// The fonts must be those the model was laid out with. Throws RenderError where the model has no
// title or no date, or is not sound (see ModelCheck.h), or a PNG is damaged.
std::string writePdf(const PageModel& model, const PdfFonts& fonts, PdfLevel level = PdfLevel::a3b);

}  // namespace rackbook
