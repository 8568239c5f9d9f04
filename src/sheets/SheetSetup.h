// What the pages of every kind of sheet have in common.
#pragma once

#include <string>

#include "base/CivilTime.h"
#include "sheets/FlowSetup.h"
#include "sheets/SheetWords.h"
#include "sheets/Template.h"

namespace rackbook {

// The template's own setup with the studio and the label "footer", filled with the day, at the foot
// of each page, and with the author and the date of the file; the builder adds its titles. `studio`
// may be empty, `created` is as in DocumentInfo.
FlowSetup sheetSetup(const SheetTemplate& sheetTemplate, const SheetWords& words,
                     const std::string& studio, CivilMinute asOf, const std::string& created);

}  // namespace rackbook
