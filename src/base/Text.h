// Unicode text from outside: validity, normal form, safe printing, near names.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// Byte offset of the first sequence that is not UTF-8 (RFC 3629), or nothing where all is well.
std::optional<std::size_t> invalidUtf8At(std::string_view bytes);

// Unicode normal form C. Pre: valid UTF-8.
std::string normalised(std::string_view text);

// Control characters (C0, C1, DEL, bidirectional overrides) and bytes that are not UTF-8 become
// visible escapes, so that no record can steer a terminal.
std::string printable(std::string_view text);

// The same with its line breaks kept as they are.
std::string printableLines(std::string_view text);

// Whether nothing of it would be seen: only spaces, line breaks and invisible format characters.
// Pre: valid UTF-8.
bool isBlank(std::string_view text);

// Without the `blanks` before and behind.
std::string trimmed(std::string_view text, std::string_view blanks = " ");

// The first control character other than line feed and tab, or nothing.
std::optional<char32_t> controlCharacterIn(std::string_view text);

// Byte offset of the n-th code point, or size() where the text is shorter. Pre: valid UTF-8.
std::size_t offsetOfCodePoint(std::string_view text, std::size_t n);

// Code points of valid UTF-8.
std::u32string codePoints(std::string_view text);

// Columns the text takes on a terminal: wide East Asian characters count two, combining marks none.
int displayWidth(std::string_view text);

// The candidate nearest to `name` by edit distance, where it is near enough to be meant
// (at most a third of the name's length, and never more than 3 edits).
std::optional<std::string> nearestName(std::string_view name,
                                       const std::vector<std::string>& candidates);

// "a, b and c"
std::string joined(const std::vector<std::string>& parts, std::string_view lastSeparator = " and ");

}  // namespace rackbook
