// Sheets of labels, as kinds of sheets.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind drawerLabelsSheetKind();

SheetKind sleeveLabelsSheetKind();

}  // namespace rackbook
