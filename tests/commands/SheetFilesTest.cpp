// What leaves the studio in the files that `rackbook sheet` writes.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "Script.h"

namespace rackbook {

namespace {

std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

void run(const std::string& line) {
    const std::string transcript = transcriptOf(splitWords(line));
    ASSERT_EQ(transcript.find("\n["), std::string::npos) << line << "\n" << transcript;
}

void beginStudio() {
    runScript("studio");
}

bool contains(const std::string& bytes, const std::string& part) {
    return bytes.find(part) != std::string::npos;
}

// A book holds what was attached as it was, and what others sent as they sent it; where a
// photograph was taken is no matter of whoever is given a sheet. JPEGs lie in a PDF as they are
// (ISO 32000-1, 7.4.8), so that the bytes of their segments can be looked for.
TEST(FilesOfSheets, CarryNothingThatACameraWroteBesideAPhotograph) {
    const FreshFolder folder;
    std::filesystem::create_directory_symlink(
        std::string(RACKBOOK_SOURCE) + "/tests/exchange/pictures", "pictures");
    beginStudio();
    run("rackbook attach pictures/with-everything.jpg --edition TIDE --caption Line --taken-on "
        "2026-03-20 --keep-metadata");
    run("rackbook sheet edition TIDE");
    const std::string photograph = bytesOf("pictures/with-everything.jpg");
    const std::string sheet = bytesOf("TIDE-edition.pdf");
    std::string scan = photograph.substr(photograph.rfind("\xff\xda"));
    scan.resize(scan.find("\xff\xd9") + 2);
    EXPECT_TRUE(contains(sheet, scan)) << "the picture itself is in it";
    for (const std::string& beside : {std::string("Exif\0\0", 6), std::string("Photoshop 3.0"),
                                      std::string("Image::ExifTool")}) {
        EXPECT_FALSE(contains(sheet, beside)) << beside;
    }
    EXPECT_TRUE(contains(photograph, std::string("Exif\0\0", 6)));
    EXPECT_TRUE(contains(photograph, "Image::ExifTool"));
}

// "/" is fit for an id, and for no file's name.
TEST(FilesOfSheets, AreAsManyAsImpressionsHoweverAlikeTheirIdsAre) {
    const FreshFolder folder;
    beginStudio();
    run("rackbook enter impression TIDE-01 edition=TIDE workingNumber=41");
    run("rackbook enter impression tide-01 edition=TIDE workingNumber=42");
    run("rackbook sheet certificate TIDE:1,41,42 --each --out three");
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator("three")) {
        EXPECT_TRUE(contains(entry.path().filename().string(), "certificate"));
        ++files;
    }
    EXPECT_EQ(files, 3U);
    EXPECT_TRUE(std::filesystem::exists("three/TIDE-01-certificate.pdf"));
    EXPECT_TRUE(std::filesystem::exists("three/TIDE-01-certificate-2.pdf"));
    run("rackbook sheet certificate TIDE:1,41,42 --out together.pdf");
}

}  // namespace

}  // namespace rackbook
