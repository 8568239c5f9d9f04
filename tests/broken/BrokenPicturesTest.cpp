// Pictures with one defect each, named for it, and beside each the exact words that it is refused
// with: files/pictures/<defect>.<form> and files/pictures/<defect>.<form>.expected. They were made
// with cjpeg and ImageMagick from a pattern of 24 by 16 pixels, or written byte by byte.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "base/Error.h"
#include "exchange/PictureFile.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

std::string pathOfDefect(const std::string& name) {
    return test::sourcePath("tests/broken/files/pictures/" + name);
}

std::vector<std::string> defects() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(pathOfDefect({})))
        if (entry.path().extension() != ".expected")
            names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

std::string wordsAgainst(const std::string& name, const std::string& bytes, bool keepsMetadata) {
    return test::messageOf<InputError>([&] { readPicture(name, bytes, keepsMetadata); });
}

class BrokenPictures : public testing::TestWithParam<std::string> {};

TEST_P(BrokenPictures, AreRefusedWithTheirExactWords) {
    const std::string bytes = test::bytesOf(pathOfDefect(GetParam()));
    const std::string expected = test::bytesOf(pathOfDefect(GetParam() + ".expected"));
    EXPECT_EQ(wordsAgainst(GetParam(), bytes, false) + "\n", expected);
    EXPECT_EQ(wordsAgainst(GetParam(), bytes, true) + "\n", expected);
}

INSTANTIATE_TEST_SUITE_P(All, BrokenPictures, testing::ValuesIn(defects()), [](const auto& one) {
    std::string name = one.param;
    for (char& c : name)
        c = c == '-' || c == '.' ? '_' : c;
    return name;
});

TEST(BrokenPictureFiles, EachHaveTheirWords) {
    ASSERT_GT(defects().size(), 15u);
    for (const auto& entry : std::filesystem::directory_iterator(pathOfDefect({})))
        if (entry.path().extension() == ".expected") {
            EXPECT_TRUE(std::filesystem::exists(entry.path().parent_path() / entry.path().stem()))
                << entry.path();
        }
}

TEST(BrokenPictureFiles, AreRefusedWhereTheyAreTooLarge) {
    std::string large = test::bytesOf(test::sourcePath("tests/exchange/pictures/plain.jpg"));
    large.resize(largestPicture_B + 1);
    EXPECT_EQ(wordsAgainst("large.jpg", large, false),
              "large.jpg: it holds more than 40 MB. Save it smaller, or as JPEG.");
}

// Wherever a file is broken off, it is refused and nothing worse happens.
TEST(BrokenPictureFiles, BrokenOffAnywhereAreRefused) {
    for (const char* name : {"with-everything.jpg", "progressive.jpg", "with-everything.png"}) {
        const std::string whole =
            test::bytesOf(test::sourcePath(std::string("tests/exchange/pictures/") + name));
        const std::size_t end =
            std::string(name) == "with-everything.jpg" ? whole.rfind("\xff\xd9") + 2 : whole.size();
        for (std::size_t length = 0; length < end; ++length)
            EXPECT_THROW(readPicture(name, whole.substr(0, length), false), InputError)
                << name << " " << length;
    }
}

// A byte that is turned over is noticed or does no harm; with the sanitizers this finds more.
TEST(BrokenPictureFiles, WithAnyByteChangedDoNoHarm) {
    for (const char* name :
         {"with-everything.jpg", "progressive.jpg", "with-everything.png", "indexed.png"}) {
        const std::string whole =
            test::bytesOf(test::sourcePath(std::string("tests/exchange/pictures/") + name));
        int refused = 0;
        for (std::size_t i = 0; i < whole.size(); ++i) {
            std::string changed = whole;
            changed[i] = static_cast<char>(changed[i] ^ 0x41);
            try {
                const KeptPicture picture = readPicture(name, changed, false);
                EXPECT_LE(picture.bytes.size(), changed.size());
            } catch (const InputError&) {
                ++refused;
            }
        }
        EXPECT_GT(refused, 50) << name;
    }
}

}  // namespace
}  // namespace rackbook
