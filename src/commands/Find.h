// rackbook find
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command findCommand();

}  // namespace rackbook
