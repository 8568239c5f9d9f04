// rackbook characterise: what the drawdowns teach about each lot.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command characteriseCommand();

}  // namespace rackbook
