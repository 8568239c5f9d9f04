// rackbook strike: a record that should never have been recorded goes.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command strikeCommand();

}  // namespace rackbook
