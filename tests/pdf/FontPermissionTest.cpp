// Fonts with other permissions are made from Noto Sans by changing fsType in its table OS/2. The
// values are those of the OpenType specification, from memory: 2 restricted licence, 4 preview and
// print, 8 editable, 0x100 no subsetting, 0x200 bitmaps only.
#include "pdf/FontPermission.h"

#include <gtest/gtest.h>

#include "OutsideReader.h"
#include "base/Files.h"
#include "pdf/FontFinder.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

std::size_t numberAt(const std::string& bytes, std::size_t at, int count) {
    std::size_t number = 0;
    for (int i = 0; i < count; ++i)
        number = number * 256 + static_cast<unsigned char>(bytes[at + static_cast<std::size_t>(i)]);
    return number;
}

// The directory of tables begins at byte 12, 16 bytes a table: name, checksum, offset, length.
std::string fontWith(unsigned fsType) {
    std::string bytes = readFile(requireFontFile("Noto Sans", FontWeight::regular), 1 << 24);
    const std::size_t tables = numberAt(bytes, 4, 2);
    for (std::size_t i = 0; i < tables; ++i) {
        const std::size_t entry = 12 + 16 * i;
        if (bytes.substr(entry, 4) != "OS/2")
            continue;
        const std::size_t at = numberAt(bytes, entry + 8, 4) + 8;
        bytes[at] = static_cast<char>(fsType >> 8);
        bytes[at + 1] = static_cast<char>(fsType & 0xFF);
    }
    return fileWith(bytes, "changed-" + std::to_string(fsType) + ".ttf");
}

TEST(FontPermission, IsGivenByFreeFontsAndForViewing) {
    for (const unsigned fsType : {0u, 4u, 8u, 2u + 4u})
        EXPECT_NO_THROW(requireEmbeddable(fontWith(fsType))) << fsType;
}

TEST(FontPermission, IsRefusedByRestrictedFonts) {
    const std::string file = fontWith(2);
    EXPECT_EQ(test::messageOf([&] { requireEmbeddable(file); }),
              file +
                  ": its maker does not allow this font to be put into documents. Name another "
                  "family in the template; Noto Sans is free.");
}

TEST(FontPermission, IsRefusedForSubsetsAndForOutlines) {
    EXPECT_NE(test::messageOf([] { requireEmbeddable(fontWith(0x100)); }).find("in part"),
              std::string::npos);
    EXPECT_NE(test::messageOf([] { requireEmbeddable(fontWith(0x200)); }).find("outlines"),
              std::string::npos);
}

}  // namespace
}  // namespace rackbook
