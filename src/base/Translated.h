// The program's own words in the language of whoever runs it. English is what stands in the code
// and what is said where there is no translation; reports in JSON are never translated.
#pragma once

#include <initializer_list>
#include <string>

namespace rackbook {

// Marks words for the extraction of texts (lupdate) that are looked up later, by what this gives
// back. `context` and `words` must be literals.
constexpr const char* toTranslate(const char* /*context*/, const char* words) {
    return words;
}

// The words in the language in use. Words that were marked with another context are not found.
std::string translated(const char* context, const char* words);
std::string translated(const char* context, const std::string& words);

// Puts the parts in place of %1, %2 … %9. What the parts say is left as it is.
std::string filledIn(const std::string& words, std::initializer_list<std::string> parts);

// Looks words up, and gives back `words` themselves where it knows none. Must last.
using Translating = std::string (*)(const char* context, const char* words);

// For the start of the program; nullptr for none.
void setTranslating(Translating translating);

}  // namespace rackbook
