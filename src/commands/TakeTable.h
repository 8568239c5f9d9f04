// rackbook take-table: a table in CSV, looked at, mapped, and taken into the book.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command takeTableCommand();

}  // namespace rackbook
