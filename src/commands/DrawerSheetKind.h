// What lies in a drawer, as a kind of sheet.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind drawerSheetKind();

}  // namespace rackbook
