// Gathers a recipe card from the book: the plan is that of rackbook mix-again.
#pragma once

#include "commands/SheetKinds.h"
#include "sheets/RecipeFacts.h"

namespace rackbook {

// What came after request.asOf is left out. Where the recipe cannot be computed the facts say why,
// and have no weighing. Throws UsageError as balanceToUse and massOption do.
// Pre: the subject is a mix or a layer; the options are those of the sheet of recipes.
RecipeFacts recipeFactsOf(const SheetRequest& request);

}  // namespace rackbook
