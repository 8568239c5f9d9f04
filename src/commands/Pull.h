// rackbook pull: one printing run of a layer.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command pullCommand();

}  // namespace rackbook
