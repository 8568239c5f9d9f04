// rackbook impressions: a batch of sheets under their working numbers.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command impressionsCommand();

}  // namespace rackbook
