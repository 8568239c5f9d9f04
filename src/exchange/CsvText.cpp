#include "exchange/CsvText.h"

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

std::string_view withoutMark(std::string_view text) {
    return text.substr(0, byteOrderMark.size()) == byteOrderMark ? text.substr(byteOrderMark.size())
                                                                 : text;
}

class CsvReader {
public:
    CsvReader(std::string_view text, char separator, const std::string& file, int firstLine)
        : m_text(withoutMark(text)), m_separator(separator), m_file(file), m_line(firstLine) {}

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
    bool atLineBreak() const { return m_text[m_at] == '\n' || m_text.substr(m_at, 2) == "\r\n"; }

    std::string field() { return !atEnd() && m_text[m_at] == '"' ? quotedField() : plainField(); }

    std::string plainField() {
        const std::size_t begin = m_at;
        while (!atEnd() && m_text[m_at] != m_separator && !atLineBreak()) {
            if (m_text[m_at] == '"')
                refuse(m_line, "a quotation mark stands inside a field that is not quoted",
                       "Put the whole field in quotation marks and double those inside it.");
            ++m_at;
        }
        return std::string(m_text.substr(begin, m_at - begin));
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
        refuse(opened, "a quoted field is never closed", "Add the quotation mark at its end.");
    }

    void requireFieldEnd() {
        if (!atEnd() && m_text[m_at] != m_separator && !atLineBreak())
            refuse(m_line, "something follows a closing quotation mark",
                   "Double quotation marks that belong to a field.");
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

    [[noreturn]] void refuse(int line, const std::string& what, const std::string& remedy) const {
        throw InputError(m_file + ":" + std::to_string(line), what, remedy);
    }

    std::string_view m_text;
    char m_separator;
    const std::string& m_file;
    int m_line;
    std::size_t m_at = 0;
};

}  // namespace

std::vector<CsvRow> csvRows(std::string_view text, char separator, const std::string& file,
                            int firstLine) {
    return CsvReader(text, separator, file, firstLine).rows();
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
