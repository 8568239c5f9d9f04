// The verb that says what is left in tins, tubes and bottles, how long it lasts and what it costs.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command stockCommand();

}  // namespace rackbook
