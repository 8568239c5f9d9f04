#include "exchange/ColourProfile.h"

#include <lcms2.h>
#include <zlib.h>

#include <optional>
#include <string>

namespace rackbook {

namespace {

// Nothing where it is damaged, or larger than a profile may be.
std::optional<std::string> inflated(std::string_view deflated) {
    z_stream stream{};
    if (inflateInit(&stream) != Z_OK)
        return std::nullopt;
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(deflated.data()));
    stream.avail_in = static_cast<uInt>(deflated.size());
    std::string bytes;
    int state = Z_OK;
    while (state == Z_OK && bytes.size() <= largestProfile_B) {
        char part[1 << 14];
        stream.next_out = reinterpret_cast<Bytef*>(part);
        stream.avail_out = sizeof part;
        state = inflate(&stream, Z_NO_FLUSH);
        bytes.append(part, sizeof part - stream.avail_out);
    }
    inflateEnd(&stream);
    return state == Z_STREAM_END ? std::optional(std::move(bytes)) : std::nullopt;
}

}  // namespace

bool isColourProfile(std::string_view bytes) {
    if (bytes.size() > largestProfile_B)
        return false;
    const cmsHPROFILE profile =
        cmsOpenProfileFromMem(bytes.data(), static_cast<cmsUInt32Number>(bytes.size()));
    if (profile == nullptr)
        return false;
    cmsCloseProfile(profile);
    return true;
}

bool holdsColourProfile(std::string_view iccpChunk) {
    const std::size_t nameEnd = iccpChunk.find('\0');
    // After the name the method, 0, of which there is but one.
    if (nameEnd == std::string_view::npos || nameEnd + 2 > iccpChunk.size() ||
        iccpChunk[nameEnd + 1] != 0)
        return false;
    const std::optional<std::string> profile = inflated(iccpChunk.substr(nameEnd + 2));
    return profile && isColourProfile(*profile);
}

}  // namespace rackbook
