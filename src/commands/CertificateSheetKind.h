// rackbook sheet certificate: one document for each impression.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind certificateSheetKind();

}  // namespace rackbook
