// What lies in a drawer, a box or another dark place on a day: to hang inside its lid.
#pragma once

#include <string>

#include "sheets/DrawerFacts.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules drawerSheetRules();

// The sections of the template in its order; an empty drawer has those alone that say so. `created`
// as in DocumentInfo. Throws RenderError for text that cannot be set. Pre: the template was read
// with drawerSheetRules().
PageModel drawerSheet(const DrawerFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
