// What is left of a record whose person had to be forgotten.
#pragma once

#include <optional>
#include <string>

#include "records/Record.h"

namespace rackbook {

// Stands where a name stood. A party or a place that is called so stays so.
constexpr const char* forgottenName = "name withheld";

// Parties, and places that are a holder's, can be forgotten: under the same id they keep what
// others reckon with (roles, the sort of place, its light) and lose name, contact and every note.
// Nothing for records of other kinds.
std::optional<Record> forgotten(const Record& record);

// The least that such a record can say, where nothing else of it is known.
std::optional<Record> forgotten(RecordKind kind, const std::string& id);

// Whether it says no more than forgotten() of it does. False for records of other kinds.
bool isNeutral(const Record& record);

}  // namespace rackbook
