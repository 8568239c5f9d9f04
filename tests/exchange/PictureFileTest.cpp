// The pictures were made by other programs from a pattern of 24 by 16 pixels: JPEG by cjpeg of
// libjpeg-turbo 2.1.5, PNG by ImageMagick 6.9.11; what lies beside the picture by ExifTool 12.57,
// the profile by lcms2. ExifTool also reads what is kept of them.
#include "exchange/PictureFile.h"

#include <gtest/gtest.h>
#include <zlib.h>

#include "base/Error.h"
#include "base/Text.h"
#include "support/Paths.h"
#include "support/RunShell.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using Words = std::vector<std::string>;

std::string bytesOf(const std::string& name) {
    return test::bytesOf(test::sourcePath("tests/exchange/pictures/" + name));
}

KeptPicture read(const std::string& name, bool keepsMetadata = false) {
    return readPicture(name, bytesOf(name), keepsMetadata);
}

struct Wanted {
    const char* name;
    PictureForm form;
    int components;
    bool isIndexed;
};

TEST(PictureFile, ReadsWhatOtherProgramsWrote) {
    for (const Wanted& wanted : {Wanted{"plain.jpg", PictureForm::jpeg, 3, false},
                                 Wanted{"progressive.jpg", PictureForm::jpeg, 3, false},
                                 Wanted{"grey.jpg", PictureForm::jpeg, 1, false},
                                 Wanted{"with-restarts.jpg", PictureForm::jpeg, 3, false},
                                 Wanted{"rgb.jpg", PictureForm::jpeg, 3, false},
                                 Wanted{"plain.png", PictureForm::png, 3, false},
                                 Wanted{"grey.png", PictureForm::png, 1, false},
                                 Wanted{"indexed.png", PictureForm::png, 3, true}}) {
        SCOPED_TRACE(wanted.name);
        const KeptPicture picture = read(wanted.name);
        EXPECT_EQ(picture.facts.form, wanted.form);
        EXPECT_EQ(picture.facts.width_px, 24);
        EXPECT_EQ(picture.facts.height_px, 16);
        EXPECT_EQ(picture.facts.components, wanted.components);
        EXPECT_EQ(picture.facts.isIndexed, wanted.isIndexed);
        EXPECT_LE(picture.facts.bits, 8);
        EXPECT_EQ(picture.facts.orientation, 1);
        EXPECT_FALSE(picture.facts.hasLocation);
    }
    EXPECT_STREQ(mediaTypeOf(PictureForm::jpeg), "image/jpeg");
    EXPECT_STREQ(mediaTypeOf(PictureForm::png), "image/png");
}

TEST(PictureFile, LeavesPicturesWithNothingBesideThemAsTheyAre) {
    for (const char* name : {"plain.jpg", "progressive.jpg", "grey.jpg", "with-restarts.jpg",
                             "rgb.jpg", "plain.png"}) {
        EXPECT_EQ(read(name).facts.metadata, Words{}) << name;
        EXPECT_TRUE(read(name).bytes == bytesOf(name)) << name;
    }
}

TEST(PictureFile, TellsWhatLiesBesideAPicture) {
    const PictureFacts jpeg = read("with-everything.jpg").facts;
    EXPECT_EQ(jpeg.metadata,
              (Words{"data of the camera (Exif)", "captions (IPTC)", "a description (XMP)",
                     "a comment", "what follows the picture"}));
    EXPECT_TRUE(jpeg.hasLocation);
    EXPECT_EQ(jpeg.orientation, 6);
    const PictureFacts png = read("with-everything.png").facts;
    EXPECT_EQ(png.metadata, (Words{"texts", "when it was changed last", "a description (XMP)",
                                   "data of the camera (Exif)"}));
    EXPECT_TRUE(png.hasLocation);
    EXPECT_EQ(png.orientation, 8);
    EXPECT_TRUE(read("place-in-xmp.jpg").facts.hasLocation);
}

TEST(PictureFile, ReadsEveryWayToTurnAPicture) {
    // The tag, its form (a number of two bytes), how many, and the number, in the order of the
    // file.
    const std::string tag("\x01\x12\x00\x03\x00\x00\x00\x01\x00", 9);
    std::string bytes = bytesOf("with-everything.jpg");
    const std::size_t at = bytes.find(tag);
    ASSERT_NE(at, std::string::npos);
    for (int way = 0; way <= 9; ++way) {
        bytes[at + tag.size()] = static_cast<char>(way);
        const int wanted = way >= 1 && way <= 8 ? way : 1;
        EXPECT_EQ(readPicture("turned.jpg", bytes, false).facts.orientation, wanted) << way;
    }
}

// From the scan on, nothing is changed.
TEST(PictureFile, KeepsTheCompressedPictureByteForByte) {
    const std::string whole = bytesOf("with-everything.jpg");
    const std::string kept = read("with-everything.jpg").bytes;
    const std::string scan = whole.substr(whole.rfind("\xff\xda"));
    const std::string picture = scan.substr(0, scan.rfind("\xff\xd9") + 2);
    EXPECT_TRUE(kept.substr(kept.rfind("\xff\xda")) == picture);
    // The same pattern with the same settings, so the same rest too.
    const std::string plain = bytesOf("plain.jpg");
    EXPECT_TRUE(kept.substr(kept.find("\xff\xdb")) == plain.substr(plain.find("\xff\xdb")));

    const std::string png = bytesOf("with-everything.png");
    const std::string data = png.substr(png.find("IDAT") - 4);
    const std::string keptPng = read("with-everything.png").bytes;
    EXPECT_NE(keptPng.find(data.substr(0, data.find("IDAT", 8) - 8)), std::string::npos);
}

TEST(PictureFile, KeepsTheProfileOfItsColours) {
    const std::string profile = read("with-everything.jpg").facts.iccProfile;
    EXPECT_EQ(profile.substr(36, 4), "acsp");  // ICC.1, table 17: the signature of a profile
    EXPECT_TRUE(read("with-everything.png").facts.iccProfile == profile);
    EXPECT_NE(read("with-everything.jpg").bytes.find(profile), std::string::npos);
    EXPECT_EQ(read("plain.jpg").facts.iccProfile, "");
}

std::string be32(std::size_t number) {
    std::string bytes;
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>(number >> shift & 0xff);
    return bytes;
}

// plain.png with a profile of those bytes (ISO/IEC 15948, 11.3.3.3), before its first IDAT.
std::string pngWithProfile(const std::string& profile) {
    uLongf length = compressBound(static_cast<uLong>(profile.size()));
    std::string deflated(length, '\0');
    compress(reinterpret_cast<Bytef*>(deflated.data()), &length,
             reinterpret_cast<const Bytef*>(profile.data()), static_cast<uLong>(profile.size()));
    const std::string content =
        std::string("iCCPmine\0\0", 10) + deflated.substr(0, static_cast<std::size_t>(length));
    const uLong check =
        crc32(0, reinterpret_cast<const Bytef*>(content.data()), static_cast<uInt>(content.size()));
    std::string png = bytesOf("plain.png");
    return png.insert(png.find("IDAT") - 4, be32(content.size() - 4) + content + be32(check));
}

TEST(PictureFile, TakesOutAProfileThatCannotBeRead) {
    const Words broken = {"a colour profile that cannot be read"};
    std::string jpeg = bytesOf("plain.jpg");
    const std::string text = "ICC_PROFILE" + std::string("\0\1\1", 3) + "my diary, not a profile";
    const std::size_t length = text.size() + 2;
    jpeg.insert(2, std::string("\xff\xe2") + static_cast<char>(length / 256) +
                       static_cast<char>(length % 256) + text);
    const KeptPicture picture = readPicture("x.jpg", jpeg, false);
    EXPECT_EQ(picture.facts.metadata, broken);
    EXPECT_EQ(picture.facts.iccProfile, "");
    EXPECT_TRUE(picture.bytes == bytesOf("plain.jpg"));
    // Of nonsense, and of more than any profile has.
    for (const std::string& nonsense :
         {std::string("my diary, not a profile"), std::string(std::size_t{300} << 20, 'x')}) {
        const KeptPicture png = readPicture("x.png", pngWithProfile(nonsense), false);
        EXPECT_EQ(png.facts.metadata, broken);
        EXPECT_TRUE(png.bytes == bytesOf("plain.png"));
    }
    const std::string sound = read("with-everything.jpg").facts.iccProfile;
    EXPECT_EQ(readPicture("x.png", pngWithProfile(sound), false).facts.metadata, Words{});
}

TEST(PictureFile, KeepsEverythingWhereAsked) {
    for (const char* name : {"with-everything.jpg", "with-everything.png"}) {
        const KeptPicture picture = read(name, true);
        EXPECT_TRUE(picture.bytes == bytesOf(name));
        EXPECT_EQ(picture.facts.metadata, read(name).facts.metadata);
    }
}

// What ExifTool finds, but for the file's own name and times, and what it makes of other tags.
std::string foundByExiftool(const std::string& bytes) {
    return test::runOn(
               bytes, "exiftool -a -u -G0 -s --System:All --ExifTool:All --Composite:All \"$FILE\"")
        .output;
}

TEST(PictureFile, LeavesNothingThatAnOutsideReaderFinds) {
    if (!test::hasProgram("exiftool"))
        GTEST_SKIP() << "exiftool is not installed";
    for (const char* name : {"with-everything.jpg", "with-everything.png"}) {
        const std::string whole = foundByExiftool(bytesOf(name));
        const std::string kept = foundByExiftool(read(name).bytes);
        for (const char* word : {"Orientation", "GPSLatitude", "Comment", "Description"})
            EXPECT_NE(whole.find(word), std::string::npos) << name << " " << word;
        for (const char* word : {"Orientation", "GPS", "Comment", "[EXIF]", "[XMP]", "[IPTC]",
                                 "Thumbnail", "ModifyDate", "Trailer"})
            EXPECT_EQ(kept.find(word), std::string::npos) << name << " " << word << "\n" << kept;
        EXPECT_NE(kept.find("[ICC_Profile]"), std::string::npos) << name;
    }
    EXPECT_EQ(test::runOn(read("with-everything.jpg").bytes,
                          "exiftool -validate -warning -error "
                          "-s3 \"$FILE\"")
                  .output,
              "OK\n");
}

// A small copy of the picture may show what was cut off it (JFIF 1.02, page 5: its size stands in
// the last two bytes of the segment's head).
TEST(PictureFile, TakesTheSmallCopyOutOfAJfifHead) {
    const std::string plain = bytesOf("plain.jpg");
    const std::string head("\xff\xe0\x00\x13JFIF\x00\x01\x02\x00\x00\x01\x00\x01\x01\x01rgb", 21);
    ASSERT_EQ(plain.substr(2, 2), "\xff\xe0");
    const KeptPicture picture =
        readPicture("small.jpg", plain.substr(0, 2) + head + plain.substr(20), false);
    EXPECT_EQ(picture.facts.metadata, Words{"a small copy of the picture"});
    EXPECT_EQ(picture.bytes.size(), plain.size());
    EXPECT_EQ(picture.bytes.find("rgb"), std::string::npos);
}

// Some programs write more behind the twelve bytes that say how colours are coded; libjpeg reads
// those from any such segment that is long enough (its jdmarker.c, APP14_DATA_LEN).
TEST(PictureFile, KeepsHowColoursAreCodedHoweverLongItsSegmentIs) {
    const std::string plain = bytesOf("rgb.jpg");
    const std::size_t at = plain.find("\xff\xee");
    ASSERT_NE(at, std::string::npos);
    ASSERT_EQ(plain.substr(at, 9), std::string("\xff\xee\x00\x0e"
                                               "Adobe",
                                               9));
    std::string longer = plain;
    longer[at + 3] = 0x10;
    longer.insert(at + 16, "me");
    const KeptPicture picture = readPicture("longer.jpg", longer, false);
    EXPECT_TRUE(picture.bytes == plain);
    EXPECT_EQ(picture.facts.metadata, Words{"other data"});
}

TEST(PictureFile, StripsWithoutDecoding) {
    for (const char* name : {"with-everything.jpg", "plain.jpg", "rgb.jpg", "grey.jpg"})
        EXPECT_TRUE(withoutMetadata(PictureForm::jpeg, name, bytesOf(name)) == read(name).bytes)
            << name;
    for (const char* name : {"with-everything.png", "plain.png", "indexed.png"})
        EXPECT_TRUE(withoutMetadata(PictureForm::png, name, bytesOf(name)) == read(name).bytes)
            << name;
    EXPECT_THROW(withoutMetadata(PictureForm::jpeg, "plain.png", bytesOf("plain.png")), InputError);
    const std::string cut = bytesOf("with-everything.jpg").substr(0, 400);
    EXPECT_THROW(withoutMetadata(PictureForm::jpeg, "cut.jpg", cut), InputError);
}

}  // namespace
}  // namespace rackbook
