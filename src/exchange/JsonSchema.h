// One JSON Schema, and what it has to say about a value, in our words. Private to exchange/.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "exchange/JsonText.h"
#include "records/Invariants.h"

namespace rackbook {

class JsonSchema {
public:
    // Throws InputError where the file cannot be read or is no schema.
    explicit JsonSchema(const std::string& path);
    ~JsonSchema();

    // All complaints, with pointers inside the value; empty where it is valid.
    std::vector<Complaint> complaintsAbout(const Json& value) const;

private:
    struct Inner;
    std::unique_ptr<Inner> m_inner;
};

}  // namespace rackbook
