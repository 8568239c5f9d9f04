// A table against the same table made again from the journal. Private to store/.
#pragma once

#include <functional>
#include <string>

#include "store/Sqlite.h"

namespace rackbook {

// Calls tell(row, what) for every difference, "mix row 2" and a sentence that names the record and
// the first column that differs; after twenty of a table once more for the rest.
void compareTables(const Database& mine, const Database& made, const std::string& table,
                   const std::function<void(const std::string&, const std::string&)>& tell);

}  // namespace rackbook
