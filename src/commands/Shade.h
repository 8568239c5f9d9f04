// rackbook shade: what to add to a batch whose test was measured.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command shadeCommand();

}  // namespace rackbook
