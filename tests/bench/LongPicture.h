// A photograph as heavy as a real one, for measuring.
#pragma once

#include "sheets/PageModel.h"

namespace rackbook {

// 48 × 32 pixels, 2 MB.
PictureFile longPicture();

}  // namespace rackbook
