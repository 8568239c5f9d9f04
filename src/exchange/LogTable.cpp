#include "exchange/LogTable.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/CsvText.h"

namespace rackbook {

namespace {

bool isBlankFrom(const CsvRow& row, std::size_t first) {
    for (std::size_t j = first; j < row.fields.size(); ++j)
        if (!trimmed(row.fields[j]).empty())
            return false;
    return true;
}

class LineReader {
public:
    LineReader(std::string_view text, const LogHeading& heading, const LightLogTerms& terms,
               LogFindings& findings)
        : m_heading(heading), m_terms(terms), m_findings(findings) {
        m_rows =
            csvRows(text.substr(heading.offset), heading.separator, findings.file(), heading.line);
        m_rows.erase(m_rows.begin());
        m_rows.erase(std::remove_if(m_rows.begin(), m_rows.end(),
                                    [](const CsvRow& row) { return isBlankFrom(row, 0); }),
                     m_rows.end());
    }

    std::vector<LogLine> read() {
        if (m_rows.empty())
            m_findings.refuse({m_heading.line, {}}, "no values follow the headings",
                              "Export the log again.");
        requireOneDecimalMark();
        std::vector<LogLine> lines;
        for (const CsvRow& row : m_rows)
            if (hasItsFields(row))
                readRow(row, lines);
        return lines;
    }

private:
    const std::string& nameOfColumn(std::size_t column) const { return m_heading.names[column]; }

    bool hasItsFields(const CsvRow& row) {
        const std::size_t last =
            std::max({m_heading.time, m_heading.value, m_heading.date.value_or(0)});
        if (row.fields.size() > last && isBlankFrom(row, m_heading.names.size()))
            return true;
        m_findings.refuse({row.line, {}},
                          "the line has " + std::to_string(row.fields.size()) +
                              (row.fields.size() == 1 ? " field" : " fields") +
                              ", and the headings are " + std::to_string(m_heading.names.size()),
                          m_heading.separator == ','
                              ? "Give a field for each heading; where decimals have a comma, part "
                                "the fields with semicolons."
                              : "Give a field for each heading.");
        return false;
    }

    std::string valueText(const CsvRow& row) const { return trimmed(row.fields[m_heading.value]); }

    // A file with both would have thousands in groups or a change of writing.
    void requireOneDecimalMark() {
        const CsvRow* withPoint = nullptr;
        const CsvRow* withComma = nullptr;
        for (const CsvRow& row : m_rows) {
            if (row.fields.size() <= m_heading.value)
                continue;
            const std::string text = valueText(row);
            if (!withPoint && text.find('.') != std::string::npos)
                withPoint = &row;
            if (!withComma && text.find(',') != std::string::npos)
                withComma = &row;
        }
        m_hasComma = withComma != nullptr && !withPoint && m_heading.separator != ',';
        if (withComma && !m_hasComma && m_heading.separator != ',')
            m_findings.refuse({withComma->line, nameOfColumn(m_heading.value)},
                              "the number has a comma, and that in line " +
                                  std::to_string(withPoint->line) + " has a point",
                              "Write all with a decimal point or all with a decimal comma, without "
                              "marks between thousands.",
                              valueText(*withComma));
    }

    void readRow(const CsvRow& row, std::vector<LogLine>& lines) {
        LogLine line;
        line.line = row.line;
        line.value = valueIn(row);
        const std::string time = trimmed(row.fields[m_heading.time]);
        std::optional<WrittenTime> written;
        if (m_heading.date) {
            const std::string date = trimmed(row.fields[*m_heading.date]);
            line.timeText = date + " " + time;
            written = writtenTimeIn(date, time, m_terms.dateOrder);
        } else {
            line.timeText = time;
            written = writtenTimeIn(time, m_terms.dateOrder);
        }
        if (!written) {
            m_findings.refuse({row.line, nameOfColumn(m_heading.time)},
                              "this is no date with a time of day",
                              std::string("Write it as ") + exampleOf(m_terms.dateOrder) +
                                  " 09:30, or say how dates are written (--date-order).",
                              line.timeText);
            return;
        }
        line.time = *written;
        lines.push_back(std::move(line));
    }

    // In lx or W/m².
    std::optional<double> valueIn(const CsvRow& row) {
        const LogSpot spot{row.line, nameOfColumn(m_heading.value)};
        const std::string text = valueText(row);
        std::string plain = text;
        if (m_hasComma)
            std::replace(plain.begin(), plain.end(), ',', '.');
        const std::optional<double> number = parseNumber(plain);
        if (number && *number >= 0)
            return inLuxOrWm2(*number, m_terms.unit);
        if (number)
            m_findings.refuse(spot, "the light is below nothing",
                              "Write 0 where it is noise; where it is not, check the logger.",
                              text);
        else if (text.empty())
            m_findings.refuse(spot, "the value is missing",
                              "Give a number, or leave the line out.");
        else if (text.find(',') == std::string::npos)
            m_findings.refuse(spot, "this is not a number", "Give a number, as 12.5.", text);
        else if (m_heading.separator == ',')
            m_findings.refuse(spot, "the number has a comma",
                              "Write decimals with a point and nothing between thousands.", text);
        // Where commas are mixed with points, that is said once for all.
        else if (m_hasComma)
            m_findings.refuse(spot, "the number has more than one comma",
                              "Write nothing between thousands.", text);
        return std::nullopt;
    }

    const LogHeading& m_heading;
    const LightLogTerms& m_terms;
    LogFindings& m_findings;
    std::vector<CsvRow> m_rows;
    bool m_hasComma = false;
};

}  // namespace

std::vector<LogLine> logLinesIn(std::string_view text, const LogHeading& heading,
                                const LightLogTerms& terms, LogFindings& findings) {
    return LineReader(text, heading, terms, findings).read();
}

}  // namespace rackbook
