#include "exchange/PictureFile.h"

#include <algorithm>

#include "base/Error.h"
#include "exchange/PictureParts.h"

namespace rackbook {

namespace {

bool beginsWith(std::string_view text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

PictureForm formOf(const std::string& file, std::string_view bytes) {
    if (bytes.empty())
        throw InputError(file, "it is empty", "Give a photograph as JPEG or PNG.");
    if (beginsWith(bytes, "\xff\xd8\xff"))
        return PictureForm::jpeg;
    if (beginsWith(bytes, "\x89PNG\r\n\x1a\n"))
        return PictureForm::png;
    throw InputError(file, "it is neither a JPEG nor a PNG",
                     "Give a photograph as JPEG or PNG; other forms are saved as one of them "
                     "first.");
}

}  // namespace

const char* mediaTypeOf(PictureForm form) {
    return form == PictureForm::jpeg ? "image/jpeg" : "image/png";
}

KeptPicture readPicture(const std::string& file, const std::string& bytes, bool keepsMetadata) {
    if (bytes.size() > largestPicture_B)
        throw InputError(file, "it holds more than 40 MB", "Save it smaller, or as JPEG.");
    KeptPicture picture;
    PictureFacts& facts = picture.facts;
    facts.form = formOf(file, bytes);
    const bool isJpeg = facts.form == PictureForm::jpeg;
    PictureParts parts = isJpeg ? jpegParts(file, bytes) : pngParts(file, bytes);
    picture.bytes = keepsMetadata ? bytes : std::move(parts.kept);
    if (isJpeg)
        decodeJpeg(file, picture.bytes, facts);
    else
        decodePng(file, picture.bytes, facts);
    if (isJpeg)
        facts.iccProfile = std::move(parts.iccProfile);
    const ExifFacts exif = exifFactsOf(parts.exif);
    facts.orientation = exif.orientation;
    facts.hasLocation = parts.hasLocation || exif.hasLocation;
    facts.metadata = std::move(parts.metadata);
    return picture;
}

std::string withoutMetadata(PictureForm form, const std::string& file, const std::string& bytes) {
    if (formOf(file, bytes) != form)
        throw InputError(file,
                         std::string("it is no ") + mediaTypeOf(form) + ", as its record says",
                         "Attach the photograph again.");
    PictureParts parts = form == PictureForm::jpeg ? jpegParts(file, bytes) : pngParts(file, bytes);
    return std::move(parts.kept);
}

void PictureParts::note(const std::string& words) {
    if (std::find(metadata.begin(), metadata.end(), words) == metadata.end())
        metadata.push_back(words);
}

void PictureParts::noteXmp(std::string_view packet) {
    note("a description (XMP)");
    for (const char* place : {"GPSLatitude", "GPSLongitude", "LocationCreated", "LocationShown"})
        hasLocation = hasLocation || packet.find(place) != std::string_view::npos;
}

void requireHandySize(const std::string& file, std::int64_t width_px, std::int64_t height_px) {
    if (width_px * height_px > mostPixels)
        throw InputError(file,
                         "it has " + std::to_string(width_px) + " by " + std::to_string(height_px) +
                             " pixels, more than 100 million",
                         "Save it smaller.");
}

void refuseDamaged(const std::string& file, const std::string& what) {
    throw InputError(file, "the picture is damaged: " + what,
                     "Copy it from the camera or the scanner again.");
}

}  // namespace rackbook
