#include "exchange/CgatsFile.h"

#include <lcms2.h>

#include <algorithm>
#include <map>
#include <memory>

#include "base/Text.h"
#include "exchange/CgatsColumns.h"
#include "exchange/CgatsHeader.h"
#include "exchange/CgatsScan.h"

namespace rackbook {

namespace {

// The library holds at most 255 tables and 200,000 cells, and looks through all keywords for each
// new one.
constexpr std::size_t mostTables = 100;
constexpr std::size_t mostHeaderWords = 4000;
constexpr std::size_t mostColumns = 1000;
constexpr std::size_t mostCells = 200'000;

struct ContextCloser {
    void operator()(void* context) const { cmsDeleteContext(static_cast<cmsContext>(context)); }
};
struct TablesCloser {
    void operator()(void* tables) const { cmsIT8Free(tables); }
};

// The library's reader, and what it said against the text.
class LibraryTables {
public:
    explicit LibraryTables(const std::string& text)
        : m_context(cmsCreateContext(nullptr, &m_errors)) {
        cmsSetLogErrorHandlerTHR(context(), &LibraryTables::keepError);
        m_tables.reset(
            cmsIT8LoadFromMem(context(), text.data(), static_cast<cmsUInt32Number>(text.size())));
    }

    bool isRead() const { return m_tables && m_errors.empty(); }
    const std::vector<std::string>& errors() const { return m_errors; }
    std::size_t count() const { return cmsIT8TableCount(m_tables.get()); }
    void choose(std::size_t table) {
        cmsIT8SetTable(m_tables.get(), static_cast<cmsUInt32Number>(table));
    }

    CgatsKeywords keywords() const {
        const auto text = [](const char* value) {
            return value ? std::optional(std::string(value)) : std::nullopt;
        };
        return {[=, tables = m_tables.get()](const char* keyword) {
                    return text(cmsIT8GetProperty(tables, keyword));
                },
                [=, tables = m_tables.get()](const char* keyword, const char* name) {
                    return text(cmsIT8GetPropertyMulti(tables, keyword, name));
                }};
    }

private:
    cmsContext context() const { return static_cast<cmsContext>(m_context.get()); }

    static void keepError(cmsContext context, cmsUInt32Number, const char* text) {
        auto& errors = *static_cast<std::vector<std::string>*>(cmsGetContextUserData(context));
        if (errors.size() < 10)
            errors.emplace_back(text);
    }

    std::vector<std::string> m_errors;
    std::unique_ptr<void, ContextCloser> m_context;
    std::unique_ptr<void, TablesCloser> m_tables;
};

// ": Line 13, Count mismatch" as a line and words.
void refuseAsLibraryDoes(const std::string& error, MeasurementDraft& draft) {
    const std::size_t at = error.find("Line ");
    const std::size_t comma = error.find(", ", at);
    int line = 0;
    std::string words = error;
    if (at != std::string::npos && comma != std::string::npos) {
        line = std::atoi(error.c_str() + at + 5);
        words = error.substr(comma + 2);
    }
    while (!words.empty() && (words.back() == '\n' || words.back() == '.'))
        words.pop_back();
    draft.refuse({line, {}, {}}, "the colour library cannot read this: " + words,
                 "Export the file again, or put the line right.");
}

// Words that would make the library open another file.
void refuseIncluding(std::string_view text, MeasurementDraft& draft) {
    int line = 1;
    for (std::size_t i = 0; i < text.size(); ++i) {
        line += text[i] == '\n' ? 1 : 0;
        if ((text[i] == '.' || text[i] == '$') && isSameWord(text.substr(i + 1, 7), "INCLUDE")) {
            draft.refuse({line, {}, {}}, "the file wants another file to be read into it",
                         "Put all in one file.");
            return;
        }
    }
}

struct Row {
    std::size_t first = 0;  // among the data words
    int line = 0;
};

// Rows of as many words as there are columns, where each begins a line: one value too few in a
// line is not made up for by one too many in the next.
std::optional<std::vector<Row>> rowsOverLines(const CgatsTable& table) {
    std::vector<Row> rows;
    for (std::size_t i = 0; i < table.data.size(); i += table.columns.size()) {
        if (i > 0 && table.data[i].line == table.data[i - 1].line)
            return std::nullopt;
        rows.push_back({i, table.data[i].line});
    }
    return rows;
}

// A row a line; or, where the words come out even all the same, rows over several lines.
std::vector<Row> rowsOf(const CgatsTable& table, std::optional<long long> sets,
                        MeasurementDraft& draft) {
    const std::size_t width = table.columns.size();
    std::vector<Row> lines;
    for (std::size_t i = 0; i < table.data.size(); ++i)
        if (lines.empty() || table.data[i].line != lines.back().line)
            lines.push_back({i, table.data[i].line});
    std::vector<std::pair<int, std::size_t>> wrong;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::size_t end = i + 1 < lines.size() ? lines[i + 1].first : table.data.size();
        if (end - lines[i].first != width)
            wrong.emplace_back(lines[i].line, end - lines[i].first);
    }
    if (wrong.empty())
        return lines;
    if (sets && *sets >= 0 && table.data.size() == static_cast<std::size_t>(*sets) * width) {
        if (std::optional<std::vector<Row>> rows = rowsOverLines(table))
            return std::move(*rows);
    }
    for (const auto& [line, count] : wrong)
        draft.refuse({line, {}, {}},
                     "the line has " + std::to_string(count) + " values, and there are " +
                         std::to_string(width) + " columns",
                     "Give a value for each column; put names with blanks in quotation marks.");
    return {};
}

void requireCount(const CgatsTable& table, const char* keyword, std::size_t found,
                  const char* things, MeasurementDraft& draft) {
    const std::optional<long long> said = table.count(keyword);
    if (!said)
        draft.refuse({table.dataLine, {}, {}}, std::string(keyword) + " is missing",
                     "Say above the table how many there are: " + std::to_string(found) + ".");
    else if (*said < 0 || static_cast<std::size_t>(*said) != found)
        draft.refuse({table.dataLine, {}, {}},
                     std::string(keyword) + " is " + std::to_string(*said) + ", and there are " +
                         std::to_string(found) + " " + things,
                     "The file may be cut short: export it again, or correct the number.");
}

void requireBounds(const std::vector<CgatsTable>& tables, MeasurementDraft& draft) {
    std::size_t headerWords = 0;
    for (const CgatsTable& table : tables) {
        headerWords += table.header.size();
        if (table.columns.size() > mostColumns || table.data.size() > mostCells)
            draft.refuse({table.dataLine, {}, {}}, "the table is too large",
                         "Split it: at most " + std::to_string(mostColumns) + " columns and " +
                             std::to_string(mostCells) + " values.");
    }
    if (tables.size() > mostTables + 1 || headerWords > mostHeaderWords)
        draft.refuse({}, "the file holds too many tables or keywords", "Split it.");
}

// One table whose rows are known.
struct ReadyTable {
    std::size_t index = 0;
    std::vector<Row> rows;
    CgatsColumns columns;
};

std::vector<ReadyTable> readyTables(const std::vector<CgatsTable>& tables,
                                    MeasurementDraft& draft) {
    std::vector<ReadyTable> ready;
    for (std::size_t i = 0; i < tables.size(); ++i) {
        const CgatsTable& table = tables[i];
        if (table.dataLine == 0) {
            if (i == 0 || !table.columns.empty())
                draft.refuse({}, "there is no BEGIN_DATA",
                             "Export the file again: it is cut short.");
            continue;
        }
        if (!table.isClosed)
            draft.refuse({table.dataLine, {}, {}}, "the data that begins here has no END_DATA",
                         "Export the file again: it is cut short.");
        if (table.columns.empty()) {
            draft.refuse({table.dataLine, {}, {}}, "nothing says what the columns are",
                         "Name them between BEGIN_DATA_FORMAT and END_DATA_FORMAT.");
            continue;
        }
        requireCount(table, "NUMBER_OF_FIELDS", table.columns.size(), "columns", draft);
        std::vector<Row> rows = rowsOf(table, table.count("NUMBER_OF_SETS"), draft);
        if (!rows.empty() || table.data.empty())
            requireCount(table, "NUMBER_OF_SETS", rows.size(), "rows", draft);
        ready.push_back({i, std::move(rows), cgatsColumns(table.columns, draft)});
    }
    return ready;
}

class RowReader {
public:
    RowReader(const CgatsTable& table, const CgatsColumns& columns, const Reading& conditions,
              MeasurementDraft& draft)
        : m_table(table), m_columns(columns), m_conditions(conditions), m_draft(draft) {}

    void read(const Row& row) {
        MeasuredSample sample;
        sample.line = row.line;
        sample.reading = m_conditions;
        sample.name = m_columns.name ? m_table.data[row.first + *m_columns.name].text : "";
        const auto number = [&](std::size_t column) {
            return m_draft.number({row.line, sample.name, "column " + m_table.columns[column].text},
                                  m_table.data[row.first + column].text);
        };
        const auto three = [&](const std::array<std::size_t, 3>& columns) {
            std::array<std::optional<double>, 3> values;
            std::transform(columns.begin(), columns.end(), values.begin(), number);
            return values;
        };
        if (m_columns.lab) {
            const auto lab = three(*m_columns.lab);
            if (lab[0] && lab[1] && lab[2])
                m_draft.setLab(sample, *lab[0], *lab[1], *lab[2]);
        }
        if (m_columns.xyz) {
            const auto xyz = three(*m_columns.xyz);
            if (xyz[0] && xyz[1] && xyz[2])
                m_draft.setXyz(sample, {*xyz[0], *xyz[1], *xyz[2]});
        }
        std::vector<double> spectrum;
        for (const std::size_t column : m_columns.spectrum)
            if (const std::optional<double> value = number(column))
                spectrum.push_back(*value);
        if (m_columns.axis && spectrum.size() == m_columns.axis->count)
            m_draft.setSpectrum(sample, *m_columns.axis, std::move(spectrum), m_columns.unit);
        m_draft.add(std::move(sample));
    }

private:
    const CgatsTable& m_table;
    const CgatsColumns& m_columns;
    const Reading& m_conditions;
    MeasurementDraft& m_draft;
};

}  // namespace

void readCgats(std::string_view text, MeasurementDraft& draft) {
    refuseIncluding(text, draft);
    const std::vector<CgatsTable> tables = cgatsTables(text);
    requireBounds(tables, draft);
    if (draft.isRefused())
        return;
    const std::vector<ReadyTable> ready = readyTables(tables, draft);
    std::optional<LibraryTables> library;
    // The library counts one row where there is none.
    const bool hasRows = std::any_of(ready.begin(), ready.end(),
                                     [](const ReadyTable& one) { return !one.rows.empty(); });
    if (hasRows && !draft.isRefused()) {
        library.emplace(std::string(text));
        for (const std::string& error : library->errors())
            refuseAsLibraryDoes(error, draft);
        if (library->errors().empty() && (!library->isRead() || library->count() < ready.size()))
            draft.refuse({1, {}, {}}, "the colour library does not take this for CGATS.17",
                         "Let the first line be one word, as CGATS.17.");
    }
    for (const ReadyTable& one : ready) {
        const CgatsTable& table = tables[one.index];
        Reading conditions;
        if (library && library->isRead()) {
            library->choose(one.index);
            conditions = cgatsConditions(library->keywords(), one.columns.lab || one.columns.xyz,
                                         table.dataLine, draft);
        }
        RowReader reader(table, one.columns, conditions, draft);
        for (const Row& row : one.rows)
            reader.read(row);
    }
}

}  // namespace rackbook
