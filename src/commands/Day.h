// rackbook day
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command dayCommand();

}  // namespace rackbook
