// The chunks of a PNG file (ISO/IEC 15948).
#include <algorithm>
#include <array>

#include "exchange/ColourProfile.h"
#include "exchange/PictureParts.h"

namespace rackbook {

namespace {

constexpr std::size_t signatureLength = 8;

// What the picture is and what its colours mean.
constexpr std::array<std::string_view, 11> ofThePicture = {
    "IHDR", "PLTE", "IDAT", "IEND", "tRNS", "cHRM", "gAMA", "iCCP", "sBIT", "sRGB", "pHYs"};

std::uint32_t numberAt(std::string_view bytes, std::size_t at) {
    std::uint32_t number = 0;
    for (std::size_t i = 0; i < 4; ++i)
        number = number * 256 + static_cast<unsigned char>(bytes[at + i]);
    return number;
}

// A capital at the beginning: whoever doesn't know the chunk cannot read the picture.
bool isNeeded(std::string_view name) {
    return name[0] >= 'A' && name[0] <= 'Z';
}

void noteBeside(PictureParts& parts, std::string_view name, std::string_view content) {
    if (name == "eXIf") {
        parts.note("data of the camera (Exif)");
        parts.exif = content;
    } else if (name == "iTXt" && content.find("<rdf:RDF") != std::string_view::npos) {
        parts.noteXmp(content);
    } else if (name == "iTXt" || name == "tEXt" || name == "zTXt") {
        parts.note("texts");
    } else if (name == "tIME") {
        parts.note("when it was changed last");
    } else {
        parts.note("other data");
    }
}

}  // namespace

PictureParts pngParts(const std::string& file, std::string_view bytes) {
    PictureParts parts;
    parts.kept.reserve(bytes.size());
    parts.kept += bytes.substr(0, signatureLength);
    std::size_t at = signatureLength;
    std::string_view name;
    while (name != "IEND") {
        if (at + 12 > bytes.size())
            refuseDamaged(file, "it is cut short");
        const std::size_t length = numberAt(bytes, at);
        if (length > bytes.size() - at - 12)
            refuseDamaged(file, "it is cut short");
        name = bytes.substr(at + 4, 4);
        const bool isBroken = name == "iCCP" && !holdsColourProfile(bytes.substr(at + 8, length));
        if (isBroken)
            parts.note(brokenProfile);
        else if (isNeeded(name) ||
                 std::find(ofThePicture.begin(), ofThePicture.end(), name) != ofThePicture.end())
            parts.kept += bytes.substr(at, length + 12);
        else
            noteBeside(parts, name, bytes.substr(at + 8, length));
        at += length + 12;
    }
    if (at < bytes.size())
        parts.note("what follows the picture");
    return parts;
}

}  // namespace rackbook
