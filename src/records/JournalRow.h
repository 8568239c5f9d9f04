// One row of the journal: a record as it was written down, and what proves it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace rackbook {

// One row of the journal as it is hashed and stored. Hashes and salt are raw bytes.
struct JournalRow {
    std::int64_t entry = 0;
    std::int64_t intake = 0;
    std::string recordedAt;
    std::string recordedBy;
    std::optional<std::string> happenedAt;
    std::string action;
    std::string kind;
    std::string id;
    std::optional<std::int64_t> earlier;
    std::optional<std::string> reason;
    std::string salt;
    std::optional<std::string> payload;  // absent where it had to be forgotten
    std::string payloadHash;
    std::string previousHash;
    std::string hash;
};

}  // namespace rackbook
