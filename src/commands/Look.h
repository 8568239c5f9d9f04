// rackbook look: what the eye and a fingertip found.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command lookCommand();

}  // namespace rackbook
