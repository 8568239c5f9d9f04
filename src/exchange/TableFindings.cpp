#include "exchange/TableFindings.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/Numbers.h"
#include "records/Record.h"

namespace rackbook {

namespace {

constexpr std::size_t mostAlike = 10;

Finding findingAt(const std::string& place, const std::string& what, const std::string& value,
                  const std::string& remedy) {
    Finding finding;
    finding.rule = "table";
    finding.where.file = place;
    finding.what = what;
    finding.value = value;
    finding.remedy = remedy;
    return finding;
}

struct RecordSpotInTable {
    std::size_t record = 0;
    std::string field;  // before the next slash; empty where it is the whole record
    std::string rest;   // the pointer inside the record
};

// "/12/light/0/from": record 12, field light.
std::optional<RecordSpotInTable> spotOf(const std::string& pointer) {
    if (pointer.size() < 2 || pointer.front() != '/')
        return std::nullopt;
    const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
    const std::optional<long long> number = parseWhole(pointer.substr(1, end - 1));
    if (!number || *number < 0)
        return std::nullopt;
    RecordSpotInTable spot;
    spot.record = static_cast<std::size_t>(*number);
    spot.rest = pointer.substr(end);
    spot.field = spot.rest.empty() ? "" : spot.rest.substr(1, spot.rest.find('/', 1) - 1);
    return spot;
}

class Telling {
public:
    Telling(const TableFile& table, const TableMapping& mapping, const MadeFromTable& made)
        : m_table(table), m_mapping(mapping), m_made(made) {}

    std::vector<Finding> run(const std::vector<Finding>& others) {
        std::vector<RowFinding> rows = m_made.findings;
        std::vector<Finding> elsewhere;
        for (const Finding& finding : others) {
            const std::optional<RecordSpotInTable> spot = spotOf(finding.where.pointer);
            if (spot && spot->record < m_made.records.size())
                add(rows, finding, *spot);
            else
                elsewhere.push_back(finding);
        }
        std::stable_sort(rows.begin(), rows.end(),
                         [](const RowFinding& a, const RowFinding& b) { return a.row < b.row; });
        std::vector<Finding> told = grammarFindings();
        tellRows(rows, told);
        told.insert(told.end(), elsewhere.begin(), elsewhere.end());
        return told;
    }

private:
    std::vector<Finding> grammarFindings() const {
        std::vector<Finding> told;
        for (const CsvFault& fault : m_table.faults)
            told.push_back(findingAt(m_table.name + ", line " + std::to_string(fault.line),
                                     fault.what, {}, fault.remedy));
        if (told.size() > mostAlike) {
            const std::size_t more = told.size() - mostAlike;
            told.resize(mostAlike);
            told.push_back(findingAt(m_table.name,
                                     "and " + std::to_string(more) + " more such lines", {},
                                     "Perhaps another mark parts the cells; rackbook take-table "
                                     "FILE shows what was found."));
        }
        return told;
    }

    void add(std::vector<RowFinding>& rows, const Finding& finding,
             const RecordSpotInTable& spot) const {
        if (m_made.unread.count({spot.record, spot.field}) != 0)
            return;
        const TableRecord& record = m_made.records[spot.record];
        const std::string column = headingsOfField(m_mapping.records[record.rule], spot.field);
        std::string what = nameOf(record.kind, record.id) + ", ";
        if (!spot.field.empty())
            what += spot.rest.substr(1) + ": ";
        rows.push_back({record.row, column, what + finding.what, finding.value, finding.remedy});
    }

    void tellRows(const std::vector<RowFinding>& rows, std::vector<Finding>& told) const {
        std::map<std::pair<std::string, std::string>, std::size_t> alike;
        std::set<std::tuple<std::size_t, std::string, std::string>> toldCells;
        for (const RowFinding& row : rows) {
            // One cell may be wrong for several records; the first says it.
            if (!row.value.empty() && !toldCells.emplace(row.row, row.column, row.value).second)
                continue;
            if (++alike[{row.column, row.remedy}] > mostAlike)
                continue;
            told.push_back(findingAt(
                placeInTable(m_table.name, row.row + 1, m_table.rows[row.row].line, row.column),
                row.what, row.value, row.remedy));
        }
        for (const auto& [key, count] : alike)
            if (count > mostAlike)
                told.push_back(findingAt(
                    m_table.name + (key.first.empty() ? "" : ", column \"" + key.first + "\""),
                    "and " + std::to_string(count - mostAlike) + " more rows with the same remedy",
                    {}, key.second));
    }

    const TableFile& m_table;
    const TableMapping& m_mapping;
    const MadeFromTable& m_made;
};

}  // namespace

std::vector<Finding> tableFindings(const TableFile& table, const TableMapping& mapping,
                                   const MadeFromTable& made, const std::vector<Finding>& others) {
    return Telling(table, mapping, made).run(others);
}

std::string recordsText(const MadeFromTable& made) {
    std::string text = "[";
    for (const TableRecord& record : made.records)
        text += (text.size() > 1 ? ",\n" : "") + record.json;
    return text + "]\n";
}

}  // namespace rackbook
