// rackbook colour: the colour of a reading, and how far two readings are apart.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command colourCommand();

}  // namespace rackbook
