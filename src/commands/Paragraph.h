// Sentences between tables.
#pragma once

#include <string>

#include "cli/Console.h"

namespace rackbook {

// An empty line, then the text, wrapped.
void printParagraph(Console& console, const std::string& text);

// The text in lines of their own, emphasised.
void printHeading(Console& console, const std::string& text);

// A paragraph without the empty line.
void printWrapped(Console& console, const std::string& text);

}  // namespace rackbook
