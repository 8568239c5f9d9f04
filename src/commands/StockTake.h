// The verb that records what was found in a container when it was weighed again.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command stockTakeCommand();

}  // namespace rackbook
