// rackbook how-much: the ink that layers need.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command howMuchCommand();

}  // namespace rackbook
