// Colours and how they were measured, as sheets write them.
#pragma once

#include <string>

#include "records/Reading.h"
#include "sheets/PageModel.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// "L* 71.9  a* 17.9  b* −5.2"
std::string labText(const LabColour& colour, const SheetWords& words);

// "D50, 2°, 45:0, M1, white backing"; "not recorded" where nothing is.
std::string conditionsText(const Reading& reading, const SheetWords& words);

// Within what a page can show; values beyond have figures only.
bool canBeDrawn(const LabColour& colour);

}  // namespace rackbook
