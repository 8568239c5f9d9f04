// What a PDF says about itself, twice: in its Info dictionary and as XMP (ISO 16684-1).
#pragma once

#include <string>

#include "pdf/PdfLevel.h"
#include "sheets/PageModel.h"

namespace rackbook {

// "D:20260304083000+00'00'" (ISO 32000-1, 7.9.4) from "2026-03-04T08:30:00Z" or from the same with
// a shift. Throws RenderError for other text.
std::string pdfDate(const std::string& created);

// The packet, UTF-8, which claims the level. Empty members of the info are left out.
// Throws RenderError for a title that is empty, text that XML cannot hold, and a bad date.
std::string xmpPacket(const DocumentInfo& info, PdfLevel level = PdfLevel::a3b);

}  // namespace rackbook
