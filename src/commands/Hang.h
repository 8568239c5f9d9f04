// rackbook hang: sheets hung to dry or to see light.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command hangCommand();

}  // namespace rackbook
