// rackbook salvage: what can still be read of a damaged book, as a new one.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command salvageCommand();

}  // namespace rackbook
