// rackbook attach: a photograph or scan, with its bytes, beside what it shows.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command attachCommand();

}  // namespace rackbook
