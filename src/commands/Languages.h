// Which language the program speaks on a terminal.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace rackbook {

// RACKBOOK_LANGUAGE, else LC_ALL, LC_MESSAGES or LANG, the first that is not empty, as "de" of
// de_DE.UTF-8; nothing for C, POSIX and what is no name of a language.
std::optional<std::string> languageWanted();

// Translates from now on, where there are words in the language wanted. Not where `words`, those of
// the command line, ask for JSON: what other programs read says the same everywhere. The
// application object must be there, and outlive it.
void speakLanguageWanted(const std::vector<std::string>& words);

}  // namespace rackbook
