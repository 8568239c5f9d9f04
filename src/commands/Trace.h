// The verb that goes from a suspect lot to every impression that holds it.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command traceCommand();

}  // namespace rackbook
