// Pages drawn by cairo, a general library, to hold our own writer against.
#pragma once

#include <string>

#include "sheets/PageModel.h"

namespace rackbook {

// The text, filled boxes and pictures of the pages as a PDF file, in one font and without tags.
// Pre: there is one picture file, a JPEG.
std::string writtenByCairo(const PageModel& model);

}  // namespace rackbook
