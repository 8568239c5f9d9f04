// rackbook write-linked-art: editions as museums exchange descriptions.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command writeLinkedArtCommand();

}  // namespace rackbook
