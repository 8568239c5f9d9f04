// rackbook manual-page and rackbook completion: what the command table says, for other readers.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command manualPageCommand();
Command completionCommand();

}  // namespace rackbook
