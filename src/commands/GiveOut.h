// rackbook give-out: sheets that leave the studio go into the register.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command giveOutCommand();

}  // namespace rackbook
