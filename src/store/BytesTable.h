// The table of attachments' bytes. Private to store/.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "store/Sqlite.h"

namespace rackbook {

class BytesTable {
public:
    explicit BytesTable(const Database& database) : m_database(database) {}

    // As they lie there, right or not.
    std::optional<std::string> find(std::string_view sha256) const;
    bool holdsSound(std::string_view sha256) const;
    // Puts them there, in place of what lay there. Pre: `sha256` is theirs.
    void put(std::string_view sha256, std::string_view bytes);
    // Takes out what no attachment names any more.
    void dropUnnamed();
    // Calls see(sha256, whether the bytes are sound) for each, in the order of the hashes.
    void forEach(const std::function<void(const std::string&, bool)>& see) const;

private:
    const Database& m_database;
};

}  // namespace rackbook
