// rackbook drawers: what lies in drawers and boxes, and what of it is still at risk.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command drawersCommand();

}  // namespace rackbook
