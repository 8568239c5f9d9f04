// rackbook take-bag: a book again from a bag.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeBagCommand();

}  // namespace rackbook
