// QR codes (ISO/IEC 18004).
#pragma once

#include <string>

#include "sheets/PageModel.h"

namespace rackbook {

// The dark squares of the smallest code that holds the text with error correction M (about 15 % of
// it may be lost), in a square of side_mm with the four empty modules that readers want on each
// side. Coordinates from the square's top left corner.
// Throws RenderError, naming `where`, for more text than a code holds, and where a module would be
// smaller than 0.3 mm, which printed codes are read at with certainty.
Fill qrSquares(const std::string& utf8, double side_mm, int element, const std::string& where);

}  // namespace rackbook
