// rackbook blend: how much of two mixes makes an ink between the two.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command blendCommand();

}  // namespace rackbook
