#include "pdf/PictureShape.h"

#include "base/Error.h"
#include "base/Finding.h"

namespace rackbook {

PictureShape checkedShape(const PictureFile& picture, const std::string& where) {
    if (!picture.bytes)
        throw RenderError(where, "it has no bytes", "Report this fault of the program.");
    PictureShape shape;
    if (picture.mediaType == "image/jpeg")
        shape = jpegShape(*picture.bytes, where);
    else if (picture.mediaType == "image/png")
        shape = pngShape(*picture.bytes, where);
    else
        throw RenderError(where,
                          "\"" + excerpt(picture.mediaType) + "\" is no kind that can be drawn",
                          "Give a JPEG or PNG file.");
    if (shape.width_px != picture.width_px || shape.height_px != picture.height_px)
        throw RenderError(where,
                          "it has " + std::to_string(shape.width_px) + " × " +
                              std::to_string(shape.height_px) + " pixels, not " +
                              std::to_string(picture.width_px) + " × " +
                              std::to_string(picture.height_px),
                          "Give the file that the sheet was laid out with.");
    return shape;
}

}  // namespace rackbook
