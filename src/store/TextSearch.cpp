#include "store/TextSearch.h"

#include <algorithm>
#include <type_traits>

#include "base/Error.h"
#include "base/Text.h"
#include "store/BookInner.h"
#include "store/Columns.h"

namespace rackbook {

namespace {

// Copies the texts of one record type into the index.
template <class R>
class TextCopy {
public:
    TextCopy(const Database& from, Statement& insert) : m_from(from), m_insert(insert) {}

    template <class T>
    void operator()(const char* name, const T&) {
        const std::string field = name;
        if (field == "contact")
            return;
        const std::string kind = quoted(textOf(R::kind));
        if constexpr (std::is_same_v<T, std::string> ||
                      std::is_same_v<T, std::optional<std::string>>)
            copy(field, "SELECT id, " + quoted(name) + " FROM " + kind + " WHERE " + quoted(name) +
                            " IS NOT NULL");
        else if constexpr (std::is_same_v<T, std::vector<std::string>>)
            copy(field, "SELECT r.id, l.value FROM " + listTableOf<R>(name) + " l JOIN " + kind +
                            " r ON r.key = l." + kind);
    }

private:
    void copy(const std::string& field, const std::string& sql) {
        Statement rows = m_from.prepare(sql);
        while (rows.step()) {
            m_insert.bindText(1, textOf(R::kind));
            m_insert.bindText(2, rows.view(0));
            m_insert.bindText(3, field);
            m_insert.bindText(4, rows.view(1));
            m_insert.step();
            m_insert.reset();
        }
    }

    const Database& m_from;
    Statement& m_insert;
};

Database indexOf(const Database& from) {
    // A file without a name, of which SQLite keeps in memory what it has room for.
    Database index("", OpenMode::create, 0);
    index.execute("PRAGMA journal_mode = OFF; PRAGMA cache_size = -65536");
    index.execute(
        "CREATE VIRTUAL TABLE texts USING fts5(kind UNINDEXED, id UNINDEXED, field UNINDEXED, "
        "body, tokenize = \"unicode61 remove_diacritics 2\")");
    index.execute("CREATE VIRTUAL TABLE terms USING fts5vocab(texts, row)");
    index.execute("BEGIN");
    Statement insert =
        index.prepare("INSERT INTO texts (kind, id, field, body) VALUES (?, ?, ?, ?)");
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        TextCopy<R> copy(from, insert);
        const R sample{};
        R::fields(sample, copy);
    });
    index.execute("COMMIT");
    return index;
}

std::vector<std::string> wordsOf(const std::string& question) {
    std::vector<std::string> words;
    std::size_t at = 0;
    while (at < question.size()) {
        const std::size_t end = std::min(question.find_first_of(" \t\n", at), question.size());
        if (end > at)
            words.push_back(question.substr(at, end - at));
        at = end + 1;
    }
    return words;
}

// As a string of FTS5, so that nothing in it is taken for an operator; the star takes words that
// only begin with it.
std::string asPrefix(const std::string& word) {
    std::string text = "\"";
    for (const char letter : word)
        text += letter == '"' ? "\"\"" : std::string(1, letter);
    return text + "\"*";
}

std::size_t countOf(const Database& index, const std::string& match) {
    Statement count = index.prepare("SELECT count(*) FROM texts WHERE texts MATCH ?");
    count.bindText(1, match);
    count.step();
    return static_cast<std::size_t>(count.whole(0));
}

std::vector<std::string> allTerms(const Database& index) {
    std::vector<std::string> terms;
    Statement rows = index.prepare("SELECT term FROM terms");
    while (rows.step())
        terms.push_back(rows.text(0));
    return terms;
}

}  // namespace

TextSearch searchTexts(const BookFile& book, const std::string& question, std::size_t most) {
    const std::vector<std::string> words = wordsOf(question);
    std::string match;
    for (const std::string& word : words)
        match += (match.empty() ? "" : " ") + asPrefix(word);
    if (match.empty())
        throw UsageError("there is no word to look for", "Give one or more words.");
    const Database index = indexOf(*book.inner().database);
    TextSearch search;
    search.count = countOf(index, match);
    Statement rows = index.prepare(
        "SELECT kind, id, field, body FROM texts WHERE texts MATCH ? ORDER BY rank, rowid LIMIT ?");
    rows.bindText(1, match);
    rows.bind(2, static_cast<std::int64_t>(most));
    while (rows.step())
        if (const std::optional<RecordKind> kind = enumFrom<RecordKind>(rows.view(0)))
            search.found.push_back({*kind, rows.text(1), rows.text(2), rows.text(3)});
    if (search.count > 0)
        return search;
    const std::vector<std::string> terms = allTerms(index);
    for (const std::string& word : words)
        if (countOf(index, asPrefix(word)) == 0)
            search.unknown.emplace_back(word, nearestName(word, terms));
    return search;
}

}  // namespace rackbook
