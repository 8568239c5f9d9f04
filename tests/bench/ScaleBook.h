// Big books, written straight to a file.
#pragma once

#include <cstddef>
#include <string>

namespace rackbook {

struct ScaleBookFigures {
    double seconds = 0;
    std::size_t records = 0;
    std::size_t moves = 0;       // records of them
    std::size_t printMoves = 0;  // of one print each
    std::size_t printPulls = 0;
};

// A studio of 25 years with that many impressions, taken in some editions at a time, so that memory
// does not grow with the book. Throws where a record is refused.
ScaleBookFigures writeScaleBook(const std::string& path, const std::string& schemaFolder,
                                int impressions);

}  // namespace rackbook
