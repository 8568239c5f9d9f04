// rackbook verify: whether the book is what was recorded.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command verifyCommand();

}  // namespace rackbook
