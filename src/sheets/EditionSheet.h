// The documentation sheet of an edition.
#pragma once

#include <string>

#include "sheets/EditionFacts.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules editionSheetRules();

// The sections of the template in its order. `created` as in DocumentInfo. Nothing is estimated
// here; what is not known is called so. Holders, contacts and notes stand on no part of it.
// Throws RenderError for text that cannot be set.
// Pre: the template was read with editionSheetRules().
PageModel editionSheet(const EditionFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
