// What every page of a sheet has in common.
#pragma once

#include <string>
#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

// Nothing is printed inside the margins, running matter included.
struct Margins {
    double top_mm = 18;
    double right_mm = 18;
    double bottom_mm = 16;
    double left_mm = 24;  // room for a punched sheet
};

struct FlowSetup {
    PaperSize paper;
    Margins margins;
    double baseSize_pt = 9.5;
    std::vector<std::string> letterhead;            // first page, the first line strong
    std::string runningTitle;                       // top of the second page and those after it
    std::string footer;                             // foot of each page, left
    std::string pageOf = "Page {page} of {pages}";  // foot of each page, right
    std::string decimalSign = ".";                  // which columns of figures align on
    DocumentInfo info;
};

}  // namespace rackbook
