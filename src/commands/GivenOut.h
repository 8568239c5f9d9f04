// rackbook given-out: the register of sheets, and which of them no longer tell the truth.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command givenOutCommand();

}  // namespace rackbook
