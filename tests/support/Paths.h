// Where the sources lie, for tests that read them.
#pragma once

#include <string>

namespace rackbook::test {

inline std::string sourcePath(const std::string& name) {
    return std::string(RACKBOOK_SOURCE_DIR) + "/" + name;
}

inline std::string schemaFolder() {
    return sourcePath("schema");
}

}  // namespace rackbook::test
