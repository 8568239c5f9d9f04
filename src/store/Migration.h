// Bringing the tables of a book from one version to the next. Private to store/.
#pragma once

#include <string>

#include "store/Sqlite.h"

namespace rackbook {

// Runs sql/<version>.sql for each version after the book's own, up to `target`, each in one
// transaction with its user_version. Throws InputError for a missing file, StoreError otherwise.
void migrate(Database& database, const std::string& schemaFolder, int target);

}  // namespace rackbook
