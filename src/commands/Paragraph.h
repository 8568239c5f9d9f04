// Sentences between tables.
#pragma once

#include <string>

#include "cli/Console.h"

namespace rackbook {

// An empty line, then the text, wrapped.
void printParagraph(Console& console, const std::string& text);

// The same without the empty line.
void printWrapped(Console& console, const std::string& text);

}  // namespace rackbook
