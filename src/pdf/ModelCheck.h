// Whether a page model can be drawn. Asked before drawing begins, so that faults are told in the
// words of the model.
#pragma once

#include "pdf/PdfFonts.h"
#include "sheets/PageModel.h"

namespace rackbook {

// Throws RenderError where the model has no pages, a measure is not finite, a colour lies outside
// its range (see LabColour), a character is in none of the fonts, a curve or a fill is nothing to
// draw, a picture's file is missing, of another size than was said or of a kind that cannot be
// drawn, a picture that belongs to an element has no words for what it shows, things or elements
// name elements that are not there, or files inside have no good names.
void checkModel(const PageModel& model, const PdfFonts& fonts);

}  // namespace rackbook
