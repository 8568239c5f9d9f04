// rackbook sheet ledger: every impression of an edition, or of all.
#pragma once

#include "commands/SheetKinds.h"

namespace rackbook {

SheetKind ledgerSheetKind();

}  // namespace rackbook
