// rackbook take-sheet: bench sheets that were filled in.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeSheetCommand();

}  // namespace rackbook
