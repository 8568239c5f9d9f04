// rackbook hand-over: impressions go from one party to another.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command handOverCommand();

}  // namespace rackbook
