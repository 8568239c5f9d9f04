// rackbook write-bag: a book or an edition as an archive package.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command writeBagCommand();

}  // namespace rackbook
