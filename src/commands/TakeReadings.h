// The verb take-readings: readings out of measurement files.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeReadingsCommand();

}  // namespace rackbook
