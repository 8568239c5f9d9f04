// Photographs and scans: JPEG (ITU-T T.81 in JFIF or Exif) and PNG (ISO/IEC 15948), read so that
// they can be printed on archival sheets, and freed of what a camera writes beside the picture.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace rackbook {

constexpr std::size_t largestPicture_B = 40'000'000;
constexpr std::int64_t mostPixels = 100'000'000;

enum class PictureForm { jpeg, png };

struct PictureFacts {
    PictureForm form = PictureForm::jpeg;
    int width_px = 0;  // as the bytes hold it, before it is turned
    int height_px = 0;
    int components = 0;      // 1: greys, 3: colours; of an indexed PNG, those of its palette
    int bits = 0;            // a component; of an indexed PNG, an index
    bool isIndexed = false;  // PNG only
    int orientation = 1;     // 1 … 8: how it is turned to be seen upright, as Exif numbers it
    std::string iccProfile;  // the bytes of the profile that its colours are meant in; may be empty
    bool hasLocation = false;  // it said where it was taken
    // What lay beside the picture, in plain words, each once: "data of the camera (Exif)".
    std::vector<std::string> metadata;
};

struct KeptPicture {
    PictureFacts facts;
    std::string bytes;  // to be kept
};

// "image/jpeg" or "image/png".
const char* mediaTypeOf(PictureForm form);

// Reads a picture and decodes it once from beginning to end. Unless `keepsMetadata`, what lies
// beside the picture is left out of the bytes: everything but the picture itself, its resolution,
// and what its colours mean; the compressed picture stays byte for byte. `file` names it in
// messages.
//
// Throws InputError where it is neither JPEG nor PNG, cut short or damaged; larger than
// largestPicture_B or mostPixels; and where an archival page (PDF/A) could not hold it as it is:
// CMYK, more than 8 bits a component, arithmetic coding, a see-through or interlaced PNG.
KeptPicture readPicture(const std::string& file, const std::string& bytes, bool keepsMetadata);

// The bytes that readPicture would keep, without decoding the picture: for one that is handed on as
// it lies in a book, whoever brought it in and however much lay beside it. Throws InputError where
// its parts cannot be told from one another.
std::string withoutMetadata(PictureForm form, const std::string& file, const std::string& bytes);

}  // namespace rackbook
