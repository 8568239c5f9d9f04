// The JSON Schemas of the records, and what they have to say about a value. Private to exchange/.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "exchange/JsonText.h"
#include "records/Invariants.h"
#include "records/RecordKind.h"

namespace rackbook {

class RecordSchemas {
public:
    // Reads <schemaFolder>/records/<kind>.schema.json for every kind. Throws InputError.
    explicit RecordSchemas(const std::string& schemaFolder);
    ~RecordSchemas();

    // All complaints, with pointers inside the object; empty where it is valid.
    std::vector<Complaint> complaintsAbout(const Json& object, RecordKind kind) const;

private:
    struct Inner;
    std::unique_ptr<Inner> m_inner;
};

}  // namespace rackbook
