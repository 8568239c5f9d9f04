// rackbook layer: a colour run of an edition, planned.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command layerCommand();

}  // namespace rackbook
