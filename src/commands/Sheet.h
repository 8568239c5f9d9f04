// rackbook sheet: writes a sheet as a PDF file.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command sheetCommand();

}  // namespace rackbook
