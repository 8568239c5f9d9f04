// rackbook attached: the file of an attachment, written out again.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command attachedCommand();

}  // namespace rackbook
