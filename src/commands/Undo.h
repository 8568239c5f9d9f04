// rackbook undo
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command undoCommand();

}  // namespace rackbook
