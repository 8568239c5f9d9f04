// A plot as a builder of sheets writes it down: in the plot's own units, whatever these are.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace rackbook {

struct PlotTick {
    double at = 0;
    std::string text;  // empty for a mark without a word
};

// From left to right, or from the bottom up. to > from.
struct PlotAxis {
    double from = 0;
    double to = 1;
    std::string title;  // with the unit
    std::vector<PlotTick> ticks;
};

struct PlotPoint {
    double x = 0;
    double y = 0;
};

struct PlotLine {
    std::vector<PlotPoint> points;
    bool dashed = false;
    double grey = 0;    // 0 black … 1 white
    std::string label;  // set at the line's right end
};

// A stroke from the foot to the head of the plot, with words at its head.
struct PlotMark {
    double x = 0;
    std::string label;
};

// A range of y, shaded right across.
struct PlotBand {
    double low = 0;
    double high = 0;
};

struct Plot {
    PlotAxis x;
    PlotAxis y;
    std::vector<PlotBand> bands;
    std::vector<PlotLine> lines;
    std::vector<PlotMark> marks;
};

// An axis with at most `most` ticks at whole steps of 1, 2 or 5 times a power of ten inside from …
// to; `words` makes the text of a tick from its place and the decimals that the step needs. Pre:
// both finite, to > from, most >= 2.
PlotAxis evenAxis(double from, double to, std::string title, int most,
                  const std::function<std::string(double at, int decimals)>& words);

}  // namespace rackbook
