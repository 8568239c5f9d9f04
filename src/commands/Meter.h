// rackbook meter: light measured at a place.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command meterCommand();

}  // namespace rackbook
