// Ids out of words.
#pragma once

#include <string>
#include <string_view>

namespace rackbook {

// The same id for the same words, today and later: accents go (ä, ö, ü, æ, ø, å and ß become two
// letters), other characters become hyphens, letters of other scripts a hash. What is an id
// already stays as it is. Empty for blank text. Words that differ only in such characters may give
// the same id.
std::string fitForId(std::string_view text);

// An id of more characters than one may have is cut, and ends in a hash of the whole.
std::string cutForId(std::string id);

// Text to be compared without regard to capitals, accents kept, and to how many spaces there are.
std::string comparedText(std::string_view text);

}  // namespace rackbook
