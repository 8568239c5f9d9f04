// rackbook enter: any record, field by field.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command enterCommand();

}  // namespace rackbook
