// SHA-256 (FIPS 180-4) and bytes from the system's random source.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rackbook {

// 32 raw bytes.
std::string sha256Bytes(std::string_view bytes);

// 64 lower-case hexadecimal digits.
std::string sha256(std::string_view bytes);

// Of a file's bytes, read in parts. Throws InputError where it is missing, no regular file or
// unreadable.
std::string sha256OfFile(const std::string& path);

std::string randomBytes(int count);

// Two lower-case hexadecimal digits a byte.
std::string hexOf(std::string_view bytes);
// The bytes again; nothing where it is anything but pairs of hexadecimal digits.
std::optional<std::string> bytesOfHex(std::string_view digits);

}  // namespace rackbook
