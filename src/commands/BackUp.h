// rackbook back-up: a copy of the book that was proved to be one.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command backUpCommand();

}  // namespace rackbook
