// The sheets that every check from outside runs over. A new kind of sheet is among them as soon as
// it is a row of sheetKinds(); a sheet that wants more than a book and an edition is added by hand
// in checkedSheets().
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "pdf/PdfLevel.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"

namespace rackbook {

struct CheckedSheet {
    std::string name;  // of the file, without ".pdf"
    PageModel model;
    std::string bytes;      // PDF/A-3b
    std::string firstPart;  // PDF/A-1b
};

// Every kind of sheet of the demonstration book (those about one edition for each of EEL, BRK and
// FER), the sample sheet, one of hard words, and the rich sheet with tags, pictures and files
// inside; made once for all tests.
const std::vector<CheckedSheet>& checkedSheets();

// The same kinds of the demonstration book in a language, as page models set in their own fonts.
void forEachDemoSheet(
    const std::string& language,
    const std::function<void(const PageModel&, const SheetTemplate&, const TemplateRules&)>& check);

// Where the files are, written once: "…/EEL-edition.pdf".
std::string fileOf(const CheckedSheet& sheet, PdfLevel level = PdfLevel::a3b);

}  // namespace rackbook
