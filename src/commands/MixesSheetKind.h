// The row of the mix book in the table of sheets.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind mixesSheetKind();

}  // namespace rackbook
