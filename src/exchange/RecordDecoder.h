// A JSON object to a record. Private to exchange/.
#pragma once

#include <vector>

#include "exchange/JsonText.h"
#include "records/Invariants.h"

namespace rackbook {

struct Decoded {
    Record record;
    std::vector<Complaint> complaints;  // pointers inside the record; empty where it is sound
};

// Pre: the object satisfies the JSON Schema of its kind. Text is brought to normal form C; dates,
// ids and control characters are checked here, then the record's own invariants.
Decoded decodeObject(const Json& object, RecordKind kind);

}  // namespace rackbook
