#include "exchange/RecordSchemas.h"

#include "base/Files.h"
#include "exchange/JsonSchema.h"

namespace rackbook {

struct RecordSchemas::Inner {
    std::vector<std::unique_ptr<JsonSchema>> schemas;  // in the order of RecordKind
};

RecordSchemas::RecordSchemas(const std::string& schemaFolder) : m_inner(std::make_unique<Inner>()) {
    for (const std::string& name : enumNames<RecordKind>())
        m_inner->schemas.push_back(std::make_unique<JsonSchema>(
            pathOf(pathOf(schemaFolder, "records"), name + ".schema.json")));
}

RecordSchemas::~RecordSchemas() = default;

std::vector<Complaint> RecordSchemas::complaintsAbout(const Json& object, RecordKind kind) const {
    return m_inner->schemas[static_cast<std::size_t>(kind)]->complaintsAbout(object);
}

}  // namespace rackbook
