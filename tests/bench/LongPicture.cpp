#include "LongPicture.h"

#include <memory>

#include "base/Files.h"

namespace rackbook {

// A small picture made long by comment segments (ITU-T T.81, B.2.4.5) after its first marker.
PictureFile longPicture() {
    const std::string file = std::string(RACKBOOK_SOURCE_DIR) + "/tests/pdf/pictures/rgb.jpg";
    std::string bytes = readFile(file, 1 << 20);
    const std::string comment = std::string("\xFF\xFE\xFF\xFF", 4) + std::string(0xFFFD, 'x');
    std::string comments;
    while (comments.size() < 2000000)
        comments += comment;
    bytes.insert(2, comments);
    return {"image/jpeg", std::make_shared<const std::string>(std::move(bytes)), 48, 32, 1};
}

}  // namespace rackbook
