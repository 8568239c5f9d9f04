// Titles for the head of every page.
#pragma once

#include <string>

namespace rackbook {

// Its beginning: a long title would fill the head.
std::string shortTitle(const std::string& title);

}  // namespace rackbook
