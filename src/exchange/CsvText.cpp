#include "exchange/CsvText.h"

#include "base/Error.h"
#include "base/Utf8.h"

namespace rackbook {

namespace {

std::string_view withoutMark(std::string_view text) {
    return text.substr(0, byteOrderMark.size()) == byteOrderMark ? text.substr(byteOrderMark.size())
                                                                 : text;
}

class CsvReader {
public:
    CsvReader(std::string_view text, char separator, int firstLine, std::vector<CsvFault>& faults)
        : m_text(withoutMark(text)), m_separator(separator), m_line(firstLine), m_faults(faults) {}

    std::vector<CsvRow> rows() {
        std::vector<CsvRow> rows;
        while (m_at < m_text.size()) {
            CsvRow row;
            row.line = m_line;
            do
                row.fields.push_back(field());
            while (takeSeparator());
            rows.push_back(std::move(row));
        }
        return rows;
    }

private:
    bool atEnd() const { return m_at >= m_text.size(); }

    std::string field() { return !atEnd() && m_text[m_at] == '"' ? quotedField() : plainField(); }

    std::string plainField() {
        const std::string_view value = m_text.substr(m_at, fieldEnd() - m_at);
        m_at += value.size();
        if (value.find('"') != std::string_view::npos)
            note(m_line, "a quotation mark stands inside a field that is not quoted",
                 "Put the whole field in quotation marks and double those inside it.");
        return std::string(value);
    }

    std::string quotedField() {
        const int opened = m_line;
        std::string value;
        for (++m_at; !atEnd(); ++m_at) {
            if (m_text[m_at] == '"') {
                ++m_at;
                if (atEnd() || m_text[m_at] != '"') {
                    requireFieldEnd();
                    return value;
                }
            } else if (m_text[m_at] == '\n')
                ++m_line;
            value += m_text[m_at];
        }
        note(opened, "a quoted field is never closed", "Add the quotation mark at its end.");
        return value;
    }

    void requireFieldEnd() {
        const std::size_t end = fieldEnd();
        if (end != m_at)
            note(m_line, "something follows a closing quotation mark",
                 "Double quotation marks that belong to a field.");
        m_at = end;
    }

    // Where the next separator, line break or the end of the text is.
    std::size_t fieldEnd() const {
        std::size_t end = m_at;
        while (end < m_text.size() && m_text[end] != m_separator && m_text[end] != '\n' &&
               m_text.substr(end, 2) != "\r\n")
            ++end;
        return end;
    }

    // False at the end of a row, which is then left behind.
    bool takeSeparator() {
        if (atEnd())
            return false;
        if (m_text[m_at] == m_separator) {
            ++m_at;
            return true;
        }
        m_at += m_text[m_at] == '\r' ? 2 : 1;
        ++m_line;
        return false;
    }

    void note(int line, const char* what, const char* remedy) {
        m_faults.push_back({line, what, remedy});
    }

    std::string_view m_text;
    char m_separator;
    int m_line;
    std::vector<CsvFault>& m_faults;
    std::size_t m_at = 0;
};

}  // namespace

std::vector<CsvRow> csvRows(std::string_view text, char separator, const std::string& file,
                            int firstLine) {
    std::vector<CsvFault> faults;
    std::vector<CsvRow> rows = CsvReader(text, separator, firstLine, faults).rows();
    if (!faults.empty())
        throw InputError(file + ":" + std::to_string(faults[0].line), faults[0].what,
                         faults[0].remedy);
    return rows;
}

std::vector<CsvRow> csvRows(std::string_view text, char separator, std::vector<CsvFault>& faults) {
    return CsvReader(text, separator, 1, faults).rows();
}

char csvSeparatorOf(std::string_view text) {
    bool quoted = false;
    char found = ',';
    for (const char c : text) {
        if (c == '"')
            quoted = !quoted;
        if (quoted)
            continue;
        if (c == '\n')
            break;
        if (c == '\t')
            return '\t';
        if (c == ';')
            found = ';';
    }
    return found;
}

}  // namespace rackbook
