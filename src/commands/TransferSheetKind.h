// The sheet that goes with impressions to another party, as a kind of sheet.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind transferSheetKind();

}  // namespace rackbook
