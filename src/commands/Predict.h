// rackbook predict: the colour that a mix, a layer or an edition should have.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command predictCommand();

}  // namespace rackbook
