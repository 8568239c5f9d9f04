// Fits the lines of a label into the room that it has. Private to sheets/.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sheets/LabelGrid.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct SetLabelLine {
    std::size_t of = 0;  // position of the label's line that it belongs to
    FontRole role = FontRole::body;
    double size_pt = 0;
    std::string text;
};

struct LabelRoom {
    double width_mm = 0;
    double height_mm = 0;
};

// From one line to the next of that size.
double labelStep_mm(double size_pt);

double heightOf(const std::vector<SetLabelLine>& lines);

// As large as it goes: all lines get smaller together in steps, each down to its least size, and
// wrap. A word is parted only where no size keeps it whole. Nothing where even that needs more
// room. Pre: the texts came from settable(), without line feeds.
std::optional<std::vector<SetLabelLine>> fittedLines(const std::vector<LabelLine>& lines,
                                                     const LabelRoom& room,
                                                     const TextMeasurer& measurer);

}  // namespace rackbook
