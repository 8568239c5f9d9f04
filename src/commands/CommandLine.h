// Command lines as text.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// "rackbook VERB words", quoted as a shell wants it.
std::string shellLine(const std::string& verb, const std::vector<std::string>& words);

// One line of a day's log: words with spaces between them, those with spaces in them between
// double quotes, a double quote itself three times. Throws UsageError for single quotes at the
// beginning of a word, which would not hold it together.
std::vector<std::string> wordsOfLine(const std::string& line);
// The same the other way round.
std::string lineOf(const std::vector<std::string>& words);

}  // namespace rackbook
