// Records out of the rows of a table, by a mapping.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "base/Finding.h"
#include "exchange/TableMapping.h"

namespace rackbook {

// What the book holds already.
struct StandingRecords {
    std::function<bool(RecordKind, const std::string& id)> holds;
    // The JSON text of a record that it holds.
    std::function<std::string(RecordKind, const std::string& id)> payloadOf;
    // Id and text of a field for every record of a kind. The designation of an impression comes
    // with the code of its edition and a space before it.
    std::function<std::vector<std::pair<std::string, std::string>>(RecordKind,
                                                                   const std::string& field)>
        textsOf;
};

struct TableRecord {
    RecordKind kind = RecordKind::book;
    std::string id;
    std::string json;      // as in a record file
    std::size_t rule = 0;  // which of the mapping's records made it
    std::size_t row = 0;   // in TableFile::rows
    std::optional<std::string> changedOn;
};

// Something wrong with a row; `row` counts in TableFile::rows.
struct RowFinding {
    std::size_t row = 0;
    std::string column;  // empty where it is the whole row
    std::string what;
    std::string value;
    std::string remedy;
};

struct MadeFromTable {
    std::vector<TableRecord> records;  // in the order of rows, changes last
    std::vector<RowFinding> findings;  // where there are some, nothing may be recorded
    // Fields of records whose cells could not be read: what is said of them elsewhere follows from
    // that.
    std::set<std::pair<std::size_t, std::string>> unread;
    std::size_t rowsRead = 0;
    std::size_t rowsLeftOut = 0;     // by leaveOut
    std::size_t changesLeftOut = 0;  // of rows that were taken before
};

// Rows are chosen by the numbers that a spreadsheet gives them, from 1; none given: all below the
// headings. Throws RefusedInput where the mapping names columns that the table does not have, and
// InputError where the table has no rows.
MadeFromTable recordsFrom(const TableFile& table, const TableMapping& mapping,
                          const StandingRecords& standing, const std::vector<int>& onlyRows);

// The headings that a field of a rule comes from; empty where it comes from none.
std::string headingsOfField(const RecordRule& rule, const std::string& field);

}  // namespace rackbook
