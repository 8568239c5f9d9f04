// Records to and from their JSON form.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "records/Record.h"

namespace rackbook {

// The one JSON text of a record: fields in the order of its type, no white space, absent fields
// and false flags left out, the shortest numbers that read back equal. Equal records give equal
// text.
std::string encodeRecord(const Record& record);

// The same without those of its fields that `isLeftOut` names. What a record must have may be
// missing from it.
std::string encodeRecordWithout(const Record& record,
                                const std::function<bool(std::string_view field)>& isLeftOut);

// Reads a text that encodeRecord wrote. Throws InputError otherwise.
Record decodeRecord(std::string_view payload);

}  // namespace rackbook
