// rackbook history
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command historyCommand();

}  // namespace rackbook
