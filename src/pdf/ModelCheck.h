// Whether a page model can be drawn. Asked before drawing begins, because the PDF library does not
// let go of a page that is left half drawn.
#pragma once

#include "pdf/PdfFonts.h"
#include "sheets/PageModel.h"

namespace rackbook {

// Throws RenderError where the model has no pages, a measure is not finite, a colour lies outside
// its range (see LabColour), or a character is in none of the fonts.
void checkModel(const PageModel& model, const PdfFonts& fonts);

}  // namespace rackbook
