// The recipe card of an ink.
#pragma once

#include <string>

#include "sheets/PageModel.h"
#include "sheets/RecipeFacts.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules recipeSheetRules();

// The sections of the template in its order; those that have nothing to say are left off.
// `created` as in DocumentInfo. Throws RenderError for text that cannot be set.
// Pre: the template was read with recipeSheetRules().
PageModel recipeSheet(const RecipeFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
