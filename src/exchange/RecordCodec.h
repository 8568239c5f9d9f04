// Records to and from their JSON form.
#pragma once

#include <string>
#include <string_view>

#include "records/Record.h"

namespace rackbook {

// The one JSON text of a record: fields in the order of its type, no white space, absent fields
// and false flags left out, the shortest numbers that read back equal. Equal records give equal
// text.
std::string encodeRecord(const Record& record);

// Reads a text that encodeRecord wrote. Throws InputError otherwise.
Record decodeRecord(std::string_view payload);

}  // namespace rackbook
