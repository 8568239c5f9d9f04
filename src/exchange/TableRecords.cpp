#include "exchange/TableRecords.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Edtf.h"
#include "base/Error.h"
#include "base/Text.h"
#include "exchange/TableFields.h"
#include "records/Record.h"

namespace rackbook {

namespace {

using Key = std::pair<RecordKind, std::string>;

// Whether everything that a row makes is in the book, not counting what is made only if new.
struct RowStanding {
    bool makesSome = false;
    bool allStand = true;
};

class Maker {
public:
    Maker(const TableFile& table, const TableMapping& mapping, const StandingRecords& standing)
        : m_table(table),
          m_mapping(mapping),
          m_standing(standing),
          m_columns(table, mapping),
          m_cells(mapping, m_columns),
          m_sought(standing, m_made),
          m_fields(m_cells, m_sought, m_made) {
        std::vector<Finding> findings = columnFindings(mapping, m_columns);
        if (!findings.empty())
            throw RefusedInput(std::move(findings));
    }

    MadeFromTable run(const std::vector<int>& onlyRows) {
        for (std::size_t row = m_columns.firstRow(); row < m_table.rows.size(); ++row) {
            const bool isChosen =
                onlyRows.empty() ||
                std::binary_search(onlyRows.begin(), onlyRows.end(), static_cast<int>(row) + 1);
            if (isChosen && !isEmptyRow(m_table.rows[row]))
                readRow(row);
        }
        if (m_made.rowsRead == 0)
            throw InputError(m_table.name, "no row of records was found",
                             "Say with skipRows and headings in the mapping where they begin.");
        m_sought.find(m_records, m_changes);
        applyChanges();
        for (RowObject& made : m_records) {
            made.record.json = made.object.dump();
            m_made.records.push_back(std::move(made.record));
        }
        return std::move(m_made);
    }

private:
    void refuse(std::size_t row, const std::string& column, std::string what, std::string value,
                std::string remedy) {
        m_made.findings.push_back(
            {row, column, std::move(what), std::move(value), std::move(remedy)});
    }

    void readRow(std::size_t row) {
        const CsvRow& cells = m_table.rows[row];
        for (const ConditionRule& rule : m_mapping.leaveOut)
            if (m_cells.holds(rule, cells)) {
                ++m_made.rowsLeftOut;
                return;
            }
        ++m_made.rowsRead;
        if (!isEven(row))
            return;
        const std::size_t firstChange = m_changes.size();
        RowStanding standing;
        for (std::size_t rule = 0; rule < m_mapping.records.size(); ++rule)
            makeRecords(rule, row, standing);
        // What was changed when the row was taken may have changed again since.
        if (standing.makesSome && standing.allStand && m_changes.size() > firstChange) {
            m_made.changesLeftOut += m_changes.size() - firstChange;
            m_changes.resize(firstChange);
            m_sought.forgetFrom(m_records.size(), firstChange);
        }
    }

    // Rows of a table without headings may end where their last cells are empty.
    bool isEven(std::size_t row) {
        const std::vector<std::string>& fields = m_table.rows[row].fields;
        std::size_t used = fields.size();
        while (used > m_columns.count() && cellText(fields[used - 1], false).empty())
            --used;
        if (used == m_columns.count() || !m_mapping.hasHeadings)
            return true;
        refuse(row, {},
               "the row has " + std::to_string(used) + (used == 1 ? " cell" : " cells") +
                   ", and there are " + std::to_string(m_columns.count()) + " headings",
               {},
               "Give a cell for each heading; a cell that holds the separator wants quotation "
               "marks.");
        return false;
    }

    void makeRecords(std::size_t rule, std::size_t row, RowStanding& standing) {
        const RecordRule& made = m_mapping.records[rule];
        const CsvRow& cells = m_table.rows[row];
        if (made.when && !m_cells.holds(*made.when, cells))
            return;
        if (!made.numbers)
            return makeRecord(rule, {cells, row, std::nullopt, false, 0}, standing);
        const CellValue<std::vector<int>> numbers = m_cells.numbers(*made.numbers, cells);
        if (!numbers.value)
            return refuse(row, made.numbers->column, numbers.what,
                          m_cells.cell(cells, made.numbers->column), numbers.remedy);
        for (const int number : *numbers.value)
            makeRecord(rule, {cells, row, number, false, 0}, standing);
    }

    void makeRecord(std::size_t rule, RowTarget target, RowStanding& standing) {
        const RecordRule& made = m_mapping.records[rule];
        const std::optional<std::string> id =
            m_cells.filled(made.id, target.cells, target.number, true);
        if (!id)
            return refuse(target.row, headingsOfId(made),
                          "the cell is empty, and the id of the " + std::string(textOf(made.kind)) +
                              " is made from it",
                          {},
                          "Fill it in, make the id from other columns, or say with \"when\" which "
                          "rows make this record.");
        if (made.changedOn)
            return noteChange(rule, target, *id);
        const bool stands = m_standing.holds(made.kind, *id);
        const auto first = m_indexOf.find({made.kind, *id});
        if (made.ifNew && (stands || first != m_indexOf.end()))
            return;
        target.index = m_records.size();
        RowObject record{{made.kind, *id, {}, rule, target.row, std::nullopt},
                         {{"record", textOf(made.kind)}, {"id", *id}}};
        m_fields.fill(made, target, record.object);
        standing.makesSome = standing.makesSome || !made.ifNew;
        standing.allStand = standing.allStand && (stands || made.ifNew);
        if (first == m_indexOf.end()) {
            m_indexOf.emplace(Key{made.kind, *id}, m_records.size());
            m_records.push_back(std::move(record));
            return;
        }
        m_sought.forgetFrom(m_records.size(), m_changes.size());
        refuseOther(record, m_records[first->second]);
    }

    // The same record from two rows is one, where they agree.
    void refuseOther(const RowObject& again, const RowObject& first) {
        if (again.object == first.object)
            return;
        // One row that says what another says makes many records twice; the first tells it.
        if (!m_toldTwice.emplace(again.record.row, first.record.row).second)
            return;
        std::vector<std::string> fields;
        for (const auto& [name, value] : again.object.items())
            if (!first.object.contains(name) || first.object[name] != value)
                fields.push_back(name);
        for (const auto& [name, value] : first.object.items())
            if (!again.object.contains(name))
                fields.push_back(name);
        const RecordRule& rule = m_mapping.records[again.record.rule];
        refuse(again.record.row, headingsOfId(rule),
               nameOf(again.record.kind, again.record.id) + " is made by row " +
                   std::to_string(first.record.row + 1) + " already, and differs in " +
                   joined(fields),
               {},
               "Take one of the two rows out, put more columns into the id, or say \"ifNew\": "
               "true where the first row counts.");
    }

    void noteChange(std::size_t rule, RowTarget target, const std::string& id) {
        const RecordRule& made = m_mapping.records[rule];
        const std::string column = headingsOf(*made.changedOn);
        const std::optional<std::string> text =
            m_cells.text(*made.changedOn, target.cells, target.number, false);
        if (!text)
            return refuse(
                target.row, column,
                "the cell is empty, and it says when " + nameOf(made.kind, id) + " changed", {},
                "Fill in the day as well as it is known.");
        const bool isFixed = made.changedOn->source == ValueRule::Source::fixed;
        const CellValue<std::string> date = dateIn(*text, isFixed ? DateForm{} : m_mapping.dates);
        if (!date.value)
            return refuse(target.row, column, date.what, *text, date.remedy);
        target.isChange = true;
        target.index = m_changes.size();
        RowObject change{{made.kind, id, {}, rule, target.row, *date.value}, Json::object()};
        m_fields.fill(made, target, change.object);
        m_changes.push_back(std::move(change));
    }

    // Where several rows change one record, its last state stands.
    void applyChanges() {
        std::stable_sort(m_changes.begin(), m_changes.end(),
                         [](const RowObject& a, const RowObject& b) {
                             return EdtfDate::parse(*a.record.changedOn).earliest() <
                                    EdtfDate::parse(*b.record.changedOn).earliest();
                         });
        for (const RowObject& change : m_changes) {
            RowObject* changed = recordToChange(change.record);
            if (changed == nullptr)
                continue;
            changed->object.update(change.object);
            // What this very table makes is new, and changes nothing in the book.
            if (changed->record.changedOn)
                changed->record = change.record;
        }
    }

    RowObject* recordToChange(const TableRecord& change) {
        const Key key{change.kind, change.id};
        if (const auto made = m_indexOf.find(key); made != m_indexOf.end())
            return &m_records[made->second];
        if (!m_standing.holds(change.kind, change.id)) {
            refuse(change.row, headingsOfId(m_mapping.records[change.rule]),
                   "neither the book nor this table has " + nameOf(change.kind, change.id) +
                       ", which is to change",
                   {}, "Enter it first, or correct the cell.");
            return nullptr;
        }
        m_indexOf.emplace(key, m_records.size());
        m_records.push_back(
            {change, parseJson(m_standing.payloadOf(change.kind, change.id), "the book")});
        return &m_records.back();
    }

    const TableFile& m_table;
    const TableMapping& m_mapping;
    const StandingRecords& m_standing;
    TableColumns m_columns;
    TableCells m_cells;
    MadeFromTable m_made;
    SoughtRecords m_sought;
    RowFields m_fields;
    std::vector<RowObject> m_records;
    std::vector<RowObject> m_changes;
    std::map<Key, std::size_t> m_indexOf;
    std::set<std::pair<std::size_t, std::size_t>> m_toldTwice;  // a row, and the one before it
};

}  // namespace

MadeFromTable recordsFrom(const TableFile& table, const TableMapping& mapping,
                          const StandingRecords& standing, const std::vector<int>& onlyRows) {
    return Maker(table, mapping, standing).run(onlyRows);
}

std::string headingsOfField(const RecordRule& rule, const std::string& field) {
    std::set<std::string> names;
    for (const FieldRule& one : rule.fields)
        if (one.path.substr(0, one.path.find('.')) == field && !headingsOf(one.value).empty())
            names.insert(headingsOf(one.value));
    if (field == "id")
        names.insert(headingsOfId(rule));
    return joined({names.begin(), names.end()});
}

}  // namespace rackbook
