// rackbook take-book: what another book says, into this one.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeBookCommand();

}  // namespace rackbook
