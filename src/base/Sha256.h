// SHA-256 (FIPS 180-4).
#pragma once

#include <string>
#include <string_view>

namespace rackbook {

// 64 lower-case hexadecimal digits.
std::string sha256(std::string_view bytes);

// `count` bytes from the system's random source, as 2 * count hexadecimal digits.
std::string randomHex(int count);

}  // namespace rackbook
