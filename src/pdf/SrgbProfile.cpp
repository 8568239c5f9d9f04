#include "pdf/SrgbProfile.h"

#include <lcms2.h>

#include <array>
#include <memory>

#include "base/Error.h"

namespace rackbook {

namespace {

[[noreturn]] void refuse() {
    throw RenderError("sRGB profile", "the colour library could not make it",
                      "Check the installation of liblcms2.");
}

// 2020-01-01 00:00:00, six big-endian numbers of 16 bits (ICC.1, dateTimeNumber, bytes 24–35).
void fixDate(std::string& profile) {
    constexpr std::size_t dateAt = 24;
    constexpr std::array<unsigned, 6> date = {2020, 1, 1, 0, 0, 0};
    for (std::size_t i = 0; i < date.size(); ++i) {
        profile[dateAt + 2 * i] = static_cast<char>(date[i] >> 8);
        profile[dateAt + 2 * i + 1] = static_cast<char>(date[i] & 0xFF);
    }
}

// The profile's own checksum (bytes 84–99) may be left zero (ICC.1, profile ID).
void clearChecksum(std::string& profile) {
    profile.replace(84, 16, 16, '\0');
}

}  // namespace

std::string srgbProfile() {
    const std::unique_ptr<void, decltype(&cmsCloseProfile)> profile(cmsCreate_sRGBProfile(),
                                                                    &cmsCloseProfile);
    if (!profile)
        refuse();
    cmsSetProfileVersion(profile.get(), 2.1);
    cmsUInt32Number length = 0;
    if (!cmsSaveProfileToMem(profile.get(), nullptr, &length) || length < 128)
        refuse();
    std::string bytes(length, '\0');
    if (!cmsSaveProfileToMem(profile.get(), bytes.data(), &length))
        refuse();
    fixDate(bytes);
    clearChecksum(bytes);
    return bytes;
}

}  // namespace rackbook
