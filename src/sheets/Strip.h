// One horizontal strip of a sheet: the smallest thing that stands on one page as a whole.
#pragma once

#include <string>
#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

constexpr int noTable = -1;

// Something to be filled in by hand.
struct StripField {
    std::string name;
    Box box;  // from the strip's top left corner
    int element = noElement;
};

struct Strip {
    Page content;                  // coordinates from the strip's top left corner
    std::vector<Rule> rulesAbove;  // drawn with it, but left out at the top of a page
    double height_mm = 0;
    double before_mm = 0;          // left out at the top of a page
    bool keepsWithNext = false;    // stands on the same page as the next strip
    int repeatedHeader = noTable;  // header to set again where a page begins with this strip
    std::vector<StripField> fields;
};

// Several strips to be set one under the other without a gap.
using StripGroup = std::vector<Strip>;

inline double heightOf(const StripGroup& group) {
    double sum_mm = 0;
    for (const Strip& strip : group)
        sum_mm += strip.before_mm + strip.height_mm;
    return sum_mm;
}

}  // namespace rackbook
