// The journal: what was recorded, in order, chained by hashes. Private to store/.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "records/JournalRow.h"
#include "store/Sqlite.h"

namespace rackbook {

// SHA-256 of salt and payload: known after the payload is forgotten, and of no use for guessing it.
std::string payloadHashOf(std::string_view salt, std::string_view payload);

// SHA-256 of the row's fields in the order of the table, salt and payload left out, each as
// "<length in bytes>:<bytes>," (a netstring), an absent one as "-,".
std::string rowHashOf(const JournalRow& row);

// Of one row by itself: its record was taken out with its salt; it has another than was recorded;
// it lacks one that was not taken out.
bool isForgotten(const JournalRow& row);
bool wasChanged(const JournalRow& row);
bool isGone(const JournalRow& row);

// The hash that stands before the first entry: 32 zero bytes.
std::string firstPreviousHash();

class JournalWriter {
public:
    explicit JournalWriter(Database& database);

    // Fills entry, intake, salt and the hashes, and inserts the row. Returns its entry number.
    std::int64_t append(JournalRow& row);
    // Keeps salt, payload and intake as they are; number and chain are new.
    std::int64_t appendChained(JournalRow& row);
    // Inserts the row with all that stands in it.
    void insertAsItStands(const JournalRow& row);

private:
    Statement m_insert;
    std::int64_t m_nextEntry;
    std::int64_t m_intake;
    std::string m_previousHash;
};

class JournalReader {
public:
    explicit JournalReader(const Database& database, const std::string& tail = "ORDER BY entry");
    // The next row in order; false at the end.
    bool next(JournalRow& row);

private:
    Statement m_select;
};

}  // namespace rackbook
