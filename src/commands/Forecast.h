// rackbook forecast: when impressions should have had their light.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command forecastCommand();

}  // namespace rackbook
