// rackbook list: records of one kind, a line each.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command listCommand();

}  // namespace rackbook
