// The bench sheet among the kinds of sheets.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind benchSheetKind();

}  // namespace rackbook
