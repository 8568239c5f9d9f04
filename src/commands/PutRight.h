// rackbook put-right: too much of something is in the dish.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command putRightCommand();

}  // namespace rackbook
