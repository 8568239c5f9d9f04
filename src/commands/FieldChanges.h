// What differs between two states of a record.
#pragma once

#include <string>
#include <vector>

#include "commands/FieldText.h"
#include "records/Record.h"

namespace rackbook {

struct FieldChange {
    std::string field;
    std::string before;  // empty where it was not there
    std::string after;   // empty where it is gone
};

// In the order of the fields. Private contacts are left out. Pre: both are of one kind.
std::vector<FieldChange> changesBetween(const Record& before, const Record& after,
                                        FieldStyle style = FieldStyle::names);

}  // namespace rackbook
