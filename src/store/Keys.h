// Row numbers of records by id, and back. Private to store/.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>

#include "records/RecordKind.h"
#include "store/Sqlite.h"

namespace rackbook {

constexpr std::size_t recordKinds = std::size(EnumText<RecordKind>::names);

// Finds keys through the book's unique ids, and remembers them. Not valid across transactions of
// others.
class Keys {
public:
    explicit Keys(const Database& database) : m_database(database) {}

    std::optional<std::int64_t> find(RecordKind kind, const std::string& id);
    // Gives the id the next free row number. Pre: the id is not in the book.
    std::int64_t assign(RecordKind kind, const std::string& id);
    // After the record's row is gone.
    void forget(RecordKind kind, const std::string& id);
    // For whole batches: the caller knows about how many ids will come.
    void expect(RecordKind kind, std::size_t count);

private:
    struct Shelf {
        bool ready = false;
        bool wasEmpty = false;  // then nothing need be looked up in the book
        std::int64_t next = 1;
        Statement lookup;
        std::unordered_map<std::string, std::int64_t> known;
    };
    Shelf& shelf(RecordKind kind);

    const Database& m_database;
    std::array<Shelf, recordKinds> m_shelves;
};

// Ids by key.
class Ids {
public:
    explicit Ids(const Database& database) : m_database(database) {}

    // Reads all ids of a kind at once, for callers that will want most of them.
    void load(RecordKind kind);
    const std::string& id(RecordKind kind, std::int64_t key);

private:
    struct Shelf {
        Statement lookup;
        bool ready = false;
        std::unordered_map<std::int64_t, std::string> known;
    };

    const Database& m_database;
    std::array<Shelf, recordKinds> m_shelves;
};

}  // namespace rackbook
