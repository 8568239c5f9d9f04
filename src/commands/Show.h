// rackbook show: one record with what belongs to it.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command showCommand();

}  // namespace rackbook
