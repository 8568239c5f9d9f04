#include "exchange/CgatsScan.h"

#include <algorithm>

#include "base/Numbers.h"

namespace rackbook {

namespace {

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

class WordReader {
public:
    explicit WordReader(std::string_view text) : m_text(text) {}

    std::optional<CgatsWord> next() {
        skipToWord();
        if (m_at >= m_text.size())
            return std::nullopt;
        CgatsWord word{{}, m_line};
        m_isQuoted = m_text[m_at] == '"' || m_text[m_at] == '\'';
        const std::size_t begin = m_isQuoted ? m_at + 1 : m_at;
        std::size_t end = begin;
        if (m_isQuoted)
            end = std::min(m_text.find_first_of(std::string{m_text[m_at], '\r', '\n'}, begin),
                           m_text.size());
        else
            end = std::min(m_text.find_first_of(" \t\r\n#\"'", begin), m_text.size());
        word.text = std::string(m_text.substr(begin, end - begin));
        const bool isClosed = m_isQuoted && end < m_text.size() && m_text[end] == m_text[m_at];
        m_at = isClosed ? end + 1 : end;
        return word;
    }

    bool wasQuoted() const { return m_isQuoted; }

private:
    void skipToWord() {
        bool isComment = false;
        for (; m_at < m_text.size(); ++m_at) {
            const char c = m_text[m_at];
            if (c == '\n' || (c == '\r' && m_text.substr(m_at, 2) != "\r\n")) {
                ++m_line;
                isComment = false;
            } else if (c == '#')
                isComment = true;
            else if (!isComment && c != ' ' && c != '\t' && c != '\r')
                return;
        }
    }

    std::string_view m_text;
    std::size_t m_at = 0;
    int m_line = 1;
    bool m_isQuoted = false;
};

}  // namespace

bool isSameWord(std::string_view a, std::string_view b) {
    return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(),
                                              [](char x, char y) { return small(x) == small(y); });
}

std::optional<long long> CgatsTable::count(std::string_view keyword) const {
    std::optional<long long> found;
    for (std::size_t i = 0; i + 1 < header.size(); ++i)
        if (isSameWord(header[i].text, keyword))
            found = parseWhole(header[i + 1].text);
    return found;
}

std::vector<CgatsTable> cgatsTables(std::string_view text) {
    std::vector<CgatsTable> tables(1);
    enum class In { header, columns, data } in = In::header;
    WordReader reader(text);
    while (std::optional<CgatsWord> word = reader.next()) {
        CgatsTable& table = tables.back();
        const auto is = [&](std::string_view keyword) {
            return !reader.wasQuoted() && isSameWord(word->text, keyword);
        };
        if (is("BEGIN_DATA_FORMAT"))
            in = In::columns;
        else if (is("END_DATA_FORMAT"))
            in = In::header;
        else if (is("BEGIN_DATA")) {
            in = In::data;
            table.dataLine = word->line;
        } else if (is("END_DATA")) {
            in = In::header;
            table.isClosed = true;
            tables.emplace_back();
        } else
            (in == In::header    ? table.header
             : in == In::columns ? table.columns
                                 : table.data)
                .push_back(std::move(*word));
    }
    return tables;
}

}  // namespace rackbook
