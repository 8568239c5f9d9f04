// rackbook sign: designations given at signing.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command signCommand();

}  // namespace rackbook
