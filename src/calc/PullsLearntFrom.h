// How far back looks teach how much light is wanted.
#pragma once

#include <cstddef>

namespace rackbook {

// What is learnt comes from prints that went through one of so many pulls, the latest begun: some
// ten years of a press. Older inks are hardly in use, and a question about a few prints
// must not cost more with every edition there ever was.
constexpr std::size_t pullsLearntFrom = 2000;

}  // namespace rackbook
