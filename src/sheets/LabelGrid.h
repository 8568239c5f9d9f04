// Labels of one size, side by side and one below the other on as many pages as they need, with thin
// marks to cut by: lines of text beside a QR code.
#pragma once

#include <string>
#include <vector>

#include "sheets/FlowSetup.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct LabelLine {
    std::string text;
    double size_pt = 0;
    double least_pt = 0;  // how small it may become to fit; above 0
    bool isStrong = false;
};

struct Label {
    std::string code;       // what the QR code says; empty for none
    std::string alternate;  // the code in words
    std::vector<LabelLine> lines;
};

struct LabelGridSetup {
    PaperSize paper;
    Margins margins;
    double labelWidth_mm = 0;
    double labelHeight_mm = 0;
    double columnGap_mm = 0;
    double rowGap_mm = 0;
    DocumentInfo info;
};

// labelWidth_mm, labelHeight_mm, columnGap_mm, rowGap_mm: fields of the template of such a sheet.
std::vector<NumberRule> labelGridNumbers();

// Pre: the template was read with labelGridNumbers().
LabelGridSetup labelGridSetupOf(const SheetTemplate& sheetTemplate, DocumentInfo info);

// From the top left corner inside the margins, row by row; nothing is printed inside the margins.
// Text that would not fit gets smaller or wraps. Throws RenderError, naming the sheet and the
// label, where it cannot fit, where a code would be too fine to be read or a text cannot be set,
// and where no label has room on the page.
// Pre: at least one label, each with a line of text.
PageModel labelPages(const std::vector<Label>& labels, const LabelGridSetup& setup,
                     const TextMeasurer& measurer);

}  // namespace rackbook
