// rackbook write-table: records as a table in CSV.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command writeTableCommand();

}  // namespace rackbook
