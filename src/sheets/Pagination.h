// Deals strips out to pages.
#pragma once

#include <string>
#include <vector>

#include "sheets/FillIn.h"
#include "sheets/Strip.h"

namespace rackbook {

// Where text may stand, from the top left corner of the page.
struct PageArea {
    double left_mm = 0;
    double firstTop_mm = 0;  // on the first page
    double laterTop_mm = 0;  // on the pages after it, below the running header
    double bottom_mm = 0;
};

// Every strip stands whole on one page, in order, below the strip before it. Strips that keep with
// the next go to one page where they fit on one at all; where they don't, they are dealt out one by
// one. Headers are repeated as the strips ask. At least one page.
// Pre: area.firstTop_mm is not below area.laterTop_mm.
// Where `fields` is given, the places of the strips' fields are added to it, in their order.
// Throws RenderError, naming `where`, for a strip that is taller than a page.
std::vector<Page> paginate(const StripGroup& strips, const std::vector<StripGroup>& headers,
                           const PageArea& area, const std::string& where,
                           std::vector<FieldPlace>* fields = nullptr);

}  // namespace rackbook
