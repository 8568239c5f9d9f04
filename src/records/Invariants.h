// Rules inside one record that its JSON Schema cannot say. Rules between records are audit rules
// (checks/) or are kept by the book (store/).
#pragma once

#include <string>
#include <vector>

#include "records/Record.h"

namespace rackbook {

struct Complaint {
    std::string pointer;  // JSON pointer inside the record: "/massLow_g"
    std::string what;
    std::string remedy;
};

// All of them, in the order of the fields; empty where the record is sound.
std::vector<Complaint> complaintsAbout(const Record& record);

}  // namespace rackbook
