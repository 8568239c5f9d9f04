// Where every impression is by its moves.
#pragma once

#include <map>
#include <string>

#include "store/BookFile.h"

namespace rackbook {

// Names of places by id of the impression. One that never moved, or that left a place for nobody
// knows where, is not in it.
std::map<std::string, std::string> whereabouts(const BookFile& book);

}  // namespace rackbook
