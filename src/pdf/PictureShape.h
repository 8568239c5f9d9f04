// What a picture file says of its pixels.
#pragma once

#include <string>

#include "sheets/PageModel.h"

namespace rackbook {

struct PictureShape {
    int width_px = 0;
    int height_px = 0;
    int channels = 0;  // 1 grey, 3 RGB
};

// From the frame header of a JPEG (ITU-T T.81, B.2.2); the library for JPEG would decode the
// whole picture, of which only these figures are wanted. Throws RenderError, beginning with
// `where`, for what is no JPEG, has other than 8 bits, other than one or three components, or is
// coded in a way that PDF lacks (ISO 32000-1, 7.4.8: baseline, extended and progressive Huffman).
PictureShape jpegShape(const std::string& bytes, const std::string& where);

// Throws RenderError for what is no PNG, has transparency or 16 bits.
PictureShape pngShape(const std::string& bytes, const std::string& where);

// Rows from the top, one byte a channel. Throws RenderError also where the file is damaged.
std::string pngPixels(const std::string& bytes, const std::string& where);

// By the media type. Throws RenderError also where it is another than image/jpeg and image/png, or
// the file is of another size than was said.
PictureShape checkedShape(const PictureFile& picture, const std::string& where);

}  // namespace rackbook
