// A sheet by hand with pictures, tags and files inside, for the tests of this room.
#pragma once

#include <string>

#include "sheets/PageModel.h"

namespace rackbook {

// A picture of tests/pdf/pictures, 48 × 32 pixels.
PictureFile samplePicture(const std::string& name, int orientation = 1);

TextRun textAt(double x_mm, double baselineY_mm, const std::string& text, int element = noElement);

// A page of 100 × 100 mm with nothing on it.
PageModel emptySheet();

// Two pages: a title, a paragraph that goes on on the second page, a table with a header and a
// cell over two columns, a list, a figure with a caption, the same picture on both pages, a curve,
// a fill, a swatch, rules, page numbers, and two files inside.
PageModel richSheet();

}  // namespace rackbook
