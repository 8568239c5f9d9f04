// rackbook begin: a new book.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command beginCommand();

}  // namespace rackbook
