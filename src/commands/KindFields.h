// What the schema of a kind of record says about its fields.
#pragma once

#include <string>
#include <vector>

#include "records/RecordKind.h"

namespace rackbook {

struct FieldMeaning {
    std::string name;  // "netMass_g"; "light.lightKind" inside a list of parts
    bool needed = false;
    std::string meaning;  // whole sentences
};

// In the order of the schema, record and id left out; a list of parts is followed by its parts'
// fields. Throws InputError where the schema cannot be read.
std::vector<FieldMeaning> fieldsOfKind(const std::string& schemaFolder, RecordKind kind);

}  // namespace rackbook
