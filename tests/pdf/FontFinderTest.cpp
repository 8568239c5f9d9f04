#include "pdf/FontFinder.h"

#include <gtest/gtest.h>

#include "base/Files.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

TEST(FontFinder, FindsBothWeightsOfTheDefaultFamily) {
    EXPECT_EQ(fileNameOf(requireFontFile("Noto Sans", FontWeight::regular)),
              "NotoSans-Regular.ttf");
    EXPECT_EQ(fileNameOf(requireFontFile("Noto Sans", FontWeight::bold)), "NotoSans-Bold.ttf");
}

TEST(FontFinder, LetsNoOtherFamilyStandIn) {
    EXPECT_FALSE(findFontFile("Noto Sand", FontWeight::regular));
    EXPECT_EQ(messageOf<RenderError>([] { requireFontFile("Noto Sand", FontWeight::bold); }),
              "font family \"Noto Sand\": its TrueType outlines in the bold weight are not on this "
              "machine. Install a package that has it, or name another family in the template; "
              "Noto Sans is in the Debian package fonts-noto-core.");
}

// Noto Sans Math has one weight (Debian 12, fonts-noto-core).
TEST(FontFinder, NamesThePackageOfAKnownFamily) {
    EXPECT_EQ(messageOf<RenderError>([] { requireFontFile("Noto Sans Math", FontWeight::bold); }),
              "font family \"Noto Sans Math\": its TrueType outlines in the bold weight are not on "
              "this machine. Install the Debian package fonts-noto-core, or name another family in "
              "the template.");
}

}  // namespace
}  // namespace rackbook
