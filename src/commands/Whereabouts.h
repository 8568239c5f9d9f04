// Where every impression is by its moves.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>

#include "base/CivilTime.h"
#include "store/BookFile.h"

namespace rackbook {

// As of that minute, names of places by id of the impression. One that never moved, or that left a
// place for nobody knows where, is not in it. With `impressions` (ids) only of those, and it costs
// what they do.
std::map<std::string, std::string> whereabouts(
    const BookFile& book, CivilMinute asOf,
    const std::optional<std::set<std::string>>& impressions = {});
// The same with ids of places.
std::map<std::string, std::string> whereaboutsById(
    const BookFile& book, CivilMinute asOf,
    const std::optional<std::set<std::string>>& impressions = {});

}  // namespace rackbook
