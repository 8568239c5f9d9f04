// What the readers of JPEG and PNG share. Private to exchange/.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exchange/PictureFile.h"

namespace rackbook {

constexpr const char* brokenProfile = "a colour profile that cannot be read";

// The parts of a picture's file, sorted into those that belong to the picture and those beside it.
struct PictureParts {
    std::string kept;        // the file without what lies beside the picture
    std::string iccProfile;  // JPEG only; libpng unpacks that of a PNG
    std::string exif;        // the Exif block, beginning with its TIFF header; may be empty
    bool hasLocation = false;
    std::vector<std::string> metadata;

    // Notes a sort of metadata, once.
    void note(const std::string& words);
    // Notes an XMP packet, and whether it names a place.
    void noteXmp(std::string_view packet);
};

// What a sound beginning says; both throw InputError where the file is broken off or no such file.
PictureParts jpegParts(const std::string& file, std::string_view bytes);
PictureParts pngParts(const std::string& file, std::string_view bytes);

// Decode every row. Throw InputError as readPicture does; fill in size, components, bits, and the
// profile of a PNG.
void decodeJpeg(const std::string& file, std::string_view bytes, PictureFacts& facts);
void decodePng(const std::string& file, std::string_view bytes, PictureFacts& facts);

// Throws InputError for a picture that is too large to be kept or printed.
void requireHandySize(const std::string& file, std::int64_t width_px, std::int64_t height_px);

[[noreturn]] void refuseDamaged(const std::string& file, const std::string& what);

struct ExifFacts {
    int orientation = 1;
    bool hasLocation = false;
};

// `exif` begins with its TIFF header. What makes no sense in it counts as not there.
ExifFacts exifFactsOf(std::string_view exif);

}  // namespace rackbook
