// rackbook take-light-log: what a light logger measured at a place, looked at and recorded by days.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeLightLogCommand();

}  // namespace rackbook
