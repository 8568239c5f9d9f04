// What learning inks and matching a colour with them cost, beside bare films.
#pragma once

#include <cstddef>

namespace rackbook {

// Seconds are those of the fastest of three rounds.
struct ColourFigures {
    double matchSeconds = 0;  // one colour, from twelve inks, at most four at once
    double learnSeconds = 0;  // twelve inks and their base from four drawdowns each
    std::size_t drawdowns = 0;
    double filmSeconds = 0;  // films over paper, 36 bands each, and nothing else
    std::size_t films = 0;
};

// With invented inks (tests/calc/InventedInks.h); always the same work.
ColourFigures measuredColour();

}  // namespace rackbook
