// rackbook ready: which impressions may be put away, and which still need light.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command readyCommand();

}  // namespace rackbook
