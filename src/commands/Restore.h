// rackbook restore: a backup in the place of the book.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command restoreCommand();

}  // namespace rackbook
