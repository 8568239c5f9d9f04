// A long, tagged document with pictures, written by this program and by a general PDF library.
#pragma once

#include <cstddef>

namespace rackbook {

struct SheetFigures {
    std::size_t pages = 0;
    double writeSeconds = 0;  // from the laid-out model to bytes
    std::size_t bytes = 0;
    double otherSeconds = 0;  // cairo: the same text, boxes and picture, without tags
    std::size_t otherBytes = 0;
};

// The best of three rounds, in seconds of the processor. Every page has 60 lines of text in Noto
// Sans, 300 boxes filled at once, a picture of 2 MB that all pages share, and tags.
SheetFigures measuredSheets(std::size_t pages);

}  // namespace rackbook
