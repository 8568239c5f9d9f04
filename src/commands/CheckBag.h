// rackbook check-bag: whether a bag is what was packed.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command checkBagCommand();

}  // namespace rackbook
