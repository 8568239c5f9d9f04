// The ICC profile of the output intent.
#pragma once

#include <string>

namespace rackbook {

// An sRGB display profile (IEC 61966-2-1), version 2.1 of the ICC format, the same bytes each time.
// Throws RenderError where the colour library fails.
std::string srgbProfile();

}  // namespace rackbook
