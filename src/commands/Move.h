// rackbook move: sheets from one place to another.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command moveCommand();

}  // namespace rackbook
