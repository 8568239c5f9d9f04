// Writes records into the tables that are projections of the journal. Private to store/.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "records/Record.h"
#include "store/Keys.h"

namespace rackbook {

// A reference that leads nowhere.
struct Dangling {
    std::string pointer;  // JSON pointer inside the record
    RecordKind wanted;
    std::string id;
};

class Projector {
public:
    Projector(Database& database, Keys& keys);
    ~Projector();

    // Pre: every record that this one names has its key. Where one does not, nothing is written
    // and the dangling references come back.
    std::vector<Dangling> write(const Record& record, std::int64_t key, std::int64_t entry,
                                bool isNew);

    // Takes the row of a record out of its table, and its lists.
    void erase(RecordKind kind, std::int64_t key);

private:
    class Statements;
    Database& m_database;
    std::unique_ptr<Statements> m_statements;
    Keys& m_keys;
};

}  // namespace rackbook
