// The row of the ink stock in the table of sheets.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind stockSheetKind();

}  // namespace rackbook
