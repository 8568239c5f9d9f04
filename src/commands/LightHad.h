// rackbook light: how much light impressions have had since their last extender-rich layer.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command lightCommand();

}  // namespace rackbook
