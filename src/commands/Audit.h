// rackbook audit: what does not hold together in the book.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command auditCommand();

}  // namespace rackbook
