// The row of recipe cards in the table of sheets.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind recipeSheetKind();

}  // namespace rackbook
