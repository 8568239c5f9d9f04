// Finding the program's own files.
#pragma once

#include "commands/Command.h"

namespace rackbook {

// The environment variable RACKBOOK_DATA, where it is not empty, names the folder that holds schema
// and templates: for programs that lie elsewhere, such as tests. Else looks beside the program, as
// it lies in the build tree and installed: share/rackbook next to it, then ../share/rackbook.
// Throws StoreError where the two are not there.
DataFolders findDataFolders();

}  // namespace rackbook
