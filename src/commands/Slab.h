// The verb that says which heaps are still there and how long they last.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command slabCommand();

}  // namespace rackbook
