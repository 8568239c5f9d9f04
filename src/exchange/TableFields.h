// The fields of a record out of a row. Private to exchange/.
#pragma once

#include <optional>
#include <string>

#include "exchange/TableCells.h"
#include "exchange/TableSought.h"

namespace rackbook {

// One row, and the record or change that it makes.
struct RowTarget {
    const CsvRow& cells;
    std::size_t row = 0;
    std::optional<int> number;
    bool isChange = false;
    std::size_t index = 0;  // of the record or the change
};

class RowFields {
public:
    RowFields(const TableCells& cells, SoughtRecords& sought, MadeFromTable& made)
        : m_cells(cells), m_sought(sought), m_made(made) {}

    // Adds them to `object`. What cannot be read is refused and stands as it is written, so that
    // nothing that follows takes the record for sound. A designation that can mean one kind only
    // gets that.
    void fill(const RecordRule& rule, const RowTarget& target, Json& object);

private:
    Json valueOf(const FieldRule& rule, const FoundField& found, const RowTarget& target);
    std::vector<std::string> textsOf(const FieldRule& rule, const FoundField& found,
                                     const RowTarget& target);
    Json itemOf(const std::string& text, const FieldRule& rule, const FoundField& found,
                const RowTarget& target, const Json::json_pointer& at);
    void refuse(const RowTarget& target, const std::string& field, const std::string& column,
                const std::string& value, std::string what, std::string remedy);

    const TableCells& m_cells;
    SoughtRecords& m_sought;
    MadeFromTable& m_made;
};

}  // namespace rackbook
