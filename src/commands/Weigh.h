// rackbook weigh: one weighing of a mix.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command weighCommand();

}  // namespace rackbook
