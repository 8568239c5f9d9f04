// Colour profiles inside pictures (ICC.1). Private to exchange/.
#pragma once

#include <string_view>

namespace rackbook {

// More than any profile of a camera or a scanner has, by far.
constexpr std::size_t largestProfile_B = std::size_t{16} << 20;

// Whether it is a profile that can be opened, of at most largestProfile_B.
bool isColourProfile(std::string_view bytes);

// The same of the content of an iCCP chunk (ISO/IEC 15948, 11.3.3.3), where the profile is
// deflated. No more than largestProfile_B of it is unpacked.
bool holdsColourProfile(std::string_view iccpChunk);

}  // namespace rackbook
