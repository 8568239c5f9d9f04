// rackbook take-in: record files into the book.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeInCommand();

}  // namespace rackbook
