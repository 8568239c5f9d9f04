// Bytes of a text file to UTF-8, by whatever character set they are in.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

struct DecodedText {
    std::string text;      // UTF-8, without a byte order mark; line breaks are CR LF or LF
    std::string encoding;  // one of knownEncodings()
    bool hasMark = false;  // a byte order mark said so
    bool isGuess = false;  // nothing said so: the bytes are no UTF-8, and Windows-1252 is likeliest
};

// Names of the IANA registry, in small letters.
const std::vector<std::string>& knownEncodings();

// What may be assumed where neither the caller nor a byte order mark says the encoding, and the
// bytes are neither UTF-8 nor plainly UTF-16.
enum class EncodingGuess { none, windows1252 };

// Throws InputError naming the file and the line: bytes that the encoding does not have, a byte
// order mark of another one, control characters that no text has, an empty file, an archive.
DecodedText decodedText(std::string_view bytes, const std::optional<std::string>& encoding,
                        EncodingGuess guess, const std::string& file);

}  // namespace rackbook
