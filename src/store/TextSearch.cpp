#include "store/TextSearch.h"

#include <algorithm>
#include <cctype>
#include <type_traits>

#include "base/Error.h"
#include "base/Text.h"
#include "store/BookInner.h"
#include "store/Columns.h"

namespace rackbook {

namespace {

bool isAscii(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char letter) { return static_cast<unsigned char>(letter) < 0x80; });
}

bool isLetterOrDigit(char letter) {
    return std::isalnum(static_cast<unsigned char>(letter)) != 0;
}

// Tells at a glance of most texts that they cannot have the words of a question, so that only the
// few others go into an index. In ASCII, the tokens of unicode61 are runs of letters and digits in
// lower case; a text or a word with anything else in it is let through.
class TextSieve {
public:
    explicit TextSieve(const std::vector<std::string>& words) {
        for (const std::string& word : words)
            if (isAscii(word))
                addRunsOf(word);
    }

    bool mayHaveThem(std::string_view text) {
        if (m_runs.empty() || !isAscii(text))
            return true;
        m_lowered.assign(text);
        lower(m_lowered);
        return std::all_of(m_runs.begin(), m_runs.end(), [this](const std::string& run) {
            return m_lowered.find(run) != std::string::npos;
        });
    }

private:
    static void lower(std::string& text) {
        for (char& letter : text)
            if (letter >= 'A' && letter <= 'Z')
                letter = static_cast<char>(letter - 'A' + 'a');
    }

    void addRunsOf(std::string word) {
        lower(word);
        for (auto from = word.begin(); from != word.end();) {
            from = std::find_if(from, word.end(), isLetterOrDigit);
            const auto to = std::find_if_not(from, word.end(), isLetterOrDigit);
            if (from != to)
                m_runs.emplace_back(from, to);
            from = to;
        }
    }

    std::vector<std::string> m_runs;
    std::string m_lowered;
};

// Copies the texts of one record type that the sieve lets through into the index.
template <class R>
class TextCopy {
public:
    TextCopy(const Database& from, TextSieve& sieve, Statement& insert)
        : m_from(from), m_sieve(sieve), m_insert(insert) {}

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
            if (!m_sieve.mayHaveThem(rows.view(1)))
                continue;
            m_insert.bindText(1, textOf(R::kind));
            m_insert.bindText(2, rows.view(0));
            m_insert.bindText(3, field);
            m_insert.bindText(4, rows.view(1));
            m_insert.step();
            m_insert.reset();
        }
    }

    const Database& m_from;
    TextSieve& m_sieve;
    Statement& m_insert;
};

// Of the texts that may have the words; of all where there are none.
Database indexOf(const Database& from, const std::vector<std::string>& words) {
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
    TextSieve sieve(words);
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        TextCopy<R> copy(from, sieve, insert);
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

std::vector<std::pair<std::string, std::optional<std::string>>> unknownWords(
    const Database& wholeIndex, const std::vector<std::string>& words) {
    const std::vector<std::string> terms = allTerms(wholeIndex);
    std::vector<std::pair<std::string, std::optional<std::string>>> unknown;
    for (const std::string& word : words)
        if (countOf(wholeIndex, asPrefix(word)) == 0)
            unknown.emplace_back(word, nearestName(word, terms));
    return unknown;
}

}  // namespace

TextSearch searchTexts(const BookFile& book, const std::string& question, std::size_t most) {
    const std::vector<std::string> words = wordsOf(question);
    std::string match;
    for (const std::string& word : words)
        match += (match.empty() ? "" : " ") + asPrefix(word);
    if (match.empty())
        throw UsageError("there is no word to look for", "Give one or more words.");
    const Database index = indexOf(*book.inner().database, words);
    TextSearch search;
    search.count = countOf(index, match);
    Statement rows = index.prepare(
        "SELECT kind, id, field, body FROM texts WHERE texts MATCH ? ORDER BY rank, rowid LIMIT ?");
    rows.bindText(1, match);
    rows.bind(2, static_cast<std::int64_t>(most));
    while (rows.step())
        if (const std::optional<RecordKind> kind = enumFrom<RecordKind>(rows.view(0)))
            search.found.push_back({*kind, rows.text(1), rows.text(2), rows.text(3)});
    if (search.count == 0)
        search.unknown = unknownWords(indexOf(*book.inner().database, {}), words);
    return search;
}

}  // namespace rackbook
