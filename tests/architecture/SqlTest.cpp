// Values are bound to SQL, never glued into it. What is joined to SQL text by + may only be a name
// that the record types or the schema give, or a piece of SQL that is written in the sources.
#include <gtest/gtest.h>

#include <cctype>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

// Functions that give names in quotation marks, or text of the sources.
const std::set<std::string> givers = {"quoted", "tableOf", "listTableOf",    "columnList",
                                      "table",  "textOf",  "std::to_string", "wholeOf"};
// Variables that hold what those give, or constants.
const std::map<std::string, std::set<std::string>> holders = {
    {"Columns.h", {"table", "marks"}},
    {"ForgetSaid.cpp", {"count", "static_cast"}},  // counts what changed, in the same statement
    {"HistoryLoad.cpp", {"select", "sql", "impressionsOrder"}},
    {"Journal.cpp", {"columns", "tail"}},
    {"JournalQuery.cpp", {"columns", "tail"}},
    {"Projector.cpp", {"table", "column", "sets"}},
    {"RecordReader.cpp", {"field", "keyOf", "m_field", "of", "sql"}},
    {"RecordRows.h", {"owner", "select", "tail"}},
    {"TableComparison.cpp", {"names"}},
    {"TextSearch.cpp", {"kind"}},
};

// Every literal becomes "", so that only what is joined to it is left; remarks go.
std::string withoutLiterals(const std::string& text) {
    static const std::regex remark("//[^\n]*");
    static const std::regex literal(
        "\"(?:[^\"\\\\\n]|\\\\.)*\"(?:\\s*\"(?:[^\"\\\\\n]|\\\\.)*\")*");
    return std::regex_replace(std::regex_replace(text, remark, ""), literal, "\"\"");
}

bool isNameCharacter(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == ':';
}

// The name that stands before `end`: of a variable, or of the function whose call ends there.
std::string nameBefore(const std::string& text, std::size_t end) {
    std::size_t at = text.find_last_not_of(" \n", end - 1);
    int depth = 0;
    for (; at != std::string::npos && at > 0; --at) {
        depth += text[at] == ')' || text[at] == '>'   ? 1
                 : text[at] == '(' || text[at] == '<' ? -1
                                                      : 0;
        if (depth == 0 && text[at] != '(' && text[at] != '<')
            break;
        if (depth < 0)
            return {};
    }
    std::size_t from = at + 1;
    while (from > 0 && isNameCharacter(text[from - 1]))
        --from;
    return text.substr(from, at + 1 - from);
}

std::string nameBehind(const std::string& text, std::size_t at) {
    at = text.find_first_not_of(" \n=", at);
    if (at == std::string::npos)
        return {};
    const std::size_t from = at;
    while (at < text.size() && isNameCharacter(text[at]))
        ++at;
    std::string name = text.substr(from, at - from);
    // What is made a string is what counts.
    return name == "std::string" && text[at] == '(' ? nameBehind(text, at + 1) : name;
}

// Names joined by + in the statements of a source that hold SQL.
std::set<std::string> joinedToSql(const std::string& source) {
    static const std::regex sql(
        "\"\\s*(SELECT|INSERT|UPDATE|DELETE|PRAGMA|CREATE|DROP|ALTER|ATTACH|WITH|WHERE|AND|ORDER|"
        "FROM|JOIN|SET|VALUES|LIMIT)\\b");
    std::set<std::string> names;
    for (std::size_t at = 0; at < source.size();) {
        const std::size_t end = std::min(source.find_first_of(";{}", at), source.size());
        const std::string statement = source.substr(at, end - at);
        at = end + 1;
        if (!std::regex_search(statement, sql))
            continue;
        const std::string plain = withoutLiterals(statement);
        for (std::size_t plus = 0; (plus = plain.find('+', plus)) != std::string::npos; ++plus) {
            names.insert(nameBefore(plain, plus));
            names.insert(nameBehind(plain, plus + 1));
        }
    }
    return names;
}

std::set<std::string> strangersIn(const std::string& fileName, const std::string& source) {
    std::set<std::string> strangers;
    const auto known = holders.find(fileName);
    for (const std::string& name : joinedToSql(source)) {
        const bool isNumber =
            !name.empty() && std::isdigit(static_cast<unsigned char>(name[0])) != 0;
        const std::string last = name.substr(name.rfind('.') + 1);
        if (name.empty() || isNumber || givers.count(last) != 0 || name == "std::string" ||
            (known != holders.end() && known->second.count(name) != 0))
            continue;
        strangers.insert(name);
    }
    return strangers;
}

TEST(Sql, IsJoinedOfNamesAlone) {
    std::size_t files = 0;
    std::set<std::string> seen;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(test::sourcePath("src"))) {
        const std::string ending = entry.path().extension().string();
        if (ending != ".h" && ending != ".cpp")
            continue;
        ++files;
        const std::string name = entry.path().filename().string();
        const std::string source = test::bytesOf(entry.path().string());
        if (!joinedToSql(source).empty())
            seen.insert(name);
        for (const std::string& stranger : strangersIn(name, source))
            ADD_FAILURE() << entry.path() << ": " << stranger
                          << " is joined to SQL. Bind it, or quote it where it is a name.";
    }
    EXPECT_GT(files, 300u);
    for (const auto& [name, unused] : holders)
        EXPECT_EQ(seen.count(name), 1u) << name << " joins nothing to SQL any more";
}

TEST(Sql, StrangersAreFound) {
    const auto found = [](const std::string& source) { return strangersIn("x.cpp", source); };
    using Names = std::set<std::string>;
    EXPECT_EQ(found("f(\"SELECT a FROM b WHERE id = '\" + id + \"'\");"), Names{"id"});
    EXPECT_EQ(found("f(head + \" WHERE id = ?\");"), Names{"head"});
    EXPECT_EQ(found("f(head(1, g(2)) + \" WHERE id = ?\");"), Names{"head"});
    EXPECT_EQ(found("sql += \" AND id = \" + std::string(word) + \"\";"), (Names{"sql", "word"}));
    EXPECT_EQ(found("f(\"SELECT a FROM \" + quoted(b) + \" WHERE k = \" + std::to_string(1));"),
              Names{});
    EXPECT_EQ(found("// SELECT + x\nf(\"a\" + b);"), Names{});
}

}  // namespace
}  // namespace rackbook
