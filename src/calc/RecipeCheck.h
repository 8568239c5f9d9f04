// Whether a recipe can be made at all.
#pragma once

#include <cstddef>
#include <string>

#include "calc/Recipe.h"

namespace rackbook {

// "recipe, stage 2 (let-down)", for messages.
std::string stageLabel(const Recipe& recipe, std::size_t stage);

// Throws InputError unless every part is either one of lotCount lots or a stage before its own,
// with a share above 0 and at most 1; the shares of every stage add up to 1 within 1e-9; and every
// stage but the last goes into a later one.
void requireSound(const Recipe& recipe, std::size_t lotCount);

}  // namespace rackbook
