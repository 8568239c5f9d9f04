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

// What comes in has to keep today's rules; what was written down once only has to be readable.
enum class Rules { ofIntake, none };

// Pre: the object satisfies the JSON Schema of its kind. Text is brought to normal form C; dates,
// words and ids must be readable; by the rules of intake, text must be visible and without control
// characters, and the record's own invariants must hold.
Decoded decodeObject(const Json& object, RecordKind kind, Rules rules);

}  // namespace rackbook
