// rackbook sky: how the sky was, day by day.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command skyCommand();

}  // namespace rackbook
