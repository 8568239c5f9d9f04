// rackbook match: recipes for a recorded colour.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command matchCommand();

}  // namespace rackbook
