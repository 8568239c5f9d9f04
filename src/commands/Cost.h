// The verb that says how much ink of each lot an edition took, and what that cost.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command costCommand();

}  // namespace rackbook
