// rackbook check-sheet: a sheet held against the register and the book.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command checkSheetCommand();

}  // namespace rackbook
