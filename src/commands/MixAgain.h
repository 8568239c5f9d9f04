// rackbook mix-again: how to weigh an ink again.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command mixAgainCommand();

}  // namespace rackbook
