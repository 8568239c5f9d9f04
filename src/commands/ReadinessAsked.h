// What the facts of readiness are asked for on behalf of a sheet.
#pragma once

#include "commands/SheetKinds.h"
#include "sheets/ReadinessFacts.h"

namespace rackbook {

// Pre: the sheet's template has the labels atGallery and atHolder.
ReadinessQuestion readinessAsked(const SheetRequest& request);

}  // namespace rackbook
