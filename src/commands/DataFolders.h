// Finding the program's own files.
#pragma once

#include "commands/Command.h"

namespace rackbook {

// Looks beside the program, as it lies in the build tree and installed: share/rackbook next to it,
// then ../share/rackbook. Throws StoreError where neither is there.
DataFolders findDataFolders();

}  // namespace rackbook
