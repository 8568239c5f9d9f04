// rackbook today
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command todayCommand();

}  // namespace rackbook
