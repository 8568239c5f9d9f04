#include "BareEngine.h"

#include <sqlite3.h>

#include <chrono>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace rackbook {

namespace {

using Clock = std::chrono::steady_clock;

double secondsSince(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

class Engine {
public:
    Engine(const std::string& path, int flags) {
        if (sqlite3_open_v2(path.c_str(), &m_database, flags, nullptr) != SQLITE_OK)
            throw std::runtime_error("cannot open " + path);
    }
    ~Engine() { sqlite3_close(m_database); }
    Engine(const Engine&) = delete;
    Engine& operator=(const Engine&) = delete;

    void run(const std::string& sql) {
        char* message = nullptr;
        if (sqlite3_exec(m_database, sql.c_str(), nullptr, nullptr, &message) != SQLITE_OK)
            throw std::runtime_error(sql.substr(0, 60) + ": " + message);
    }
    sqlite3_stmt* prepare(const std::string& sql) {
        sqlite3_stmt* statement = nullptr;
        if (sqlite3_prepare_v2(m_database, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK)
            throw std::runtime_error(sql.substr(0, 60) + ": " + sqlite3_errmsg(m_database));
        return statement;
    }

private:
    sqlite3* m_database = nullptr;
};

struct TableRows {
    std::string name;
    int columns = 0;
    std::vector<sqlite3_value*> values;
};

std::vector<TableRows> rowsOf(Engine& engine) {
    std::vector<TableRows> tables;
    sqlite3_stmt* names = engine.prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER "
        "BY rowid");
    while (sqlite3_step(names) == SQLITE_ROW)
        tables.push_back({reinterpret_cast<const char*>(sqlite3_column_text(names, 0)), 0, {}});
    sqlite3_finalize(names);
    for (TableRows& table : tables) {
        sqlite3_stmt* rows = engine.prepare("SELECT * FROM \"" + table.name + "\"");
        table.columns = sqlite3_column_count(rows);
        while (sqlite3_step(rows) == SQLITE_ROW)
            for (int i = 0; i < table.columns; ++i)
                table.values.push_back(sqlite3_value_dup(sqlite3_column_value(rows, i)));
        sqlite3_finalize(rows);
    }
    return tables;
}

long long insertAll(Engine& engine, const std::vector<TableRows>& tables) {
    long long count = 0;
    for (const TableRows& table : tables) {
        std::string marks;
        for (int i = 0; i < table.columns; ++i)
            marks += i == 0 ? "?" : ",?";
        sqlite3_stmt* insert =
            engine.prepare("INSERT INTO \"" + table.name + "\" VALUES (" + marks + ")");
        const std::size_t columns = static_cast<std::size_t>(table.columns);
        for (std::size_t at = 0; at < table.values.size(); at += columns) {
            for (std::size_t i = 0; i < columns; ++i)
                sqlite3_bind_value(insert, static_cast<int>(i) + 1, table.values[at + i]);
            if (sqlite3_step(insert) != SQLITE_DONE)
                throw std::runtime_error("insert into " + table.name);
            sqlite3_reset(insert);
            ++count;
        }
        sqlite3_finalize(insert);
    }
    return count;
}

std::string textOfFile(const std::string& path) {
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

void configure(Engine& engine) {
    engine.run(
        "PRAGMA journal_mode = WAL; PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL; PRAGMA "
        "cache_size = -65536");
}

}  // namespace

BareFigures bareInsert(const std::string& bookPath, const std::vector<std::string>& sqlPaths,
                       const std::string& newPath) {
    std::vector<TableRows> tables;
    {
        Engine book(bookPath, SQLITE_OPEN_READONLY);
        tables = rowsOf(book);
    }
    Engine fresh(newPath, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    configure(fresh);
    for (const std::string& sqlPath : sqlPaths)
        fresh.run(textOfFile(sqlPath));
    BareFigures figures;
    const Clock::time_point start = Clock::now();
    fresh.run("BEGIN IMMEDIATE");
    figures.rows = insertAll(fresh, tables);
    fresh.run("COMMIT");
    figures.seconds = secondsSince(start);
    for (TableRows& table : tables)
        for (sqlite3_value* value : table.values)
            sqlite3_value_free(value);
    return figures;
}

BareFigures bareDailyInsert(const std::string& bookPath, int times) {
    BareFigures figures;
    const Clock::time_point start = Clock::now();
    for (int i = 0; i < times; ++i) {
        Engine book(bookPath, SQLITE_OPEN_READWRITE);
        configure(book);
        book.run(
            "BEGIN IMMEDIATE;"
            "INSERT INTO journal SELECT entry + 1, intake + 1, recordedAt, recordedBy, happenedAt, "
            "action, kind, id, earlier, reason, salt, payload, payloadHash, previousHash, hash "
            "FROM "
            "journal WHERE entry = (SELECT max(entry) FROM journal);"
            "INSERT INTO move SELECT key + 1, id || '+', entry, \"from\", \"to\", at, atEarliest, "
            "atLatest, until, untilEarliest, untilLatest, why, interleaved, document, note FROM "
            "move WHERE key = (SELECT max(key) FROM move);"
            "INSERT INTO move_impressions SELECT move + 1, position, impression FROM "
            "move_impressions WHERE move = (SELECT max(key) - 1 FROM move);"
            "COMMIT");
        figures.rows += 22;
    }
    figures.seconds = secondsSince(start);
    return figures;
}

void removeDailyInserts(const std::string& bookPath) {
    Engine book(bookPath, SQLITE_OPEN_READWRITE);
    book.run(
        "BEGIN IMMEDIATE;"
        "DELETE FROM move_impressions WHERE move IN (SELECT key FROM move WHERE id GLOB '*+');"
        "DELETE FROM move WHERE id GLOB '*+';"
        "UPDATE sqlite_sequence SET seq = (SELECT max(key) FROM move) WHERE name = 'move';"
        "DELETE FROM journal WHERE entry > (SELECT min(entry) FROM journal WHERE hash = (SELECT "
        "hash FROM journal ORDER BY entry DESC LIMIT 1));"
        "COMMIT");
}

BareFigures bareScan(const std::string& bookPath, const std::vector<std::string>& statements) {
    Engine book(bookPath, SQLITE_OPEN_READONLY);
    book.run("PRAGMA cache_size = -65536");
    BareFigures figures;
    long long sum = 0;
    const Clock::time_point start = Clock::now();
    for (const std::string& sql : statements) {
        sqlite3_stmt* rows = book.prepare(sql);
        const int columns = sqlite3_column_count(rows);
        while (sqlite3_step(rows) == SQLITE_ROW) {
            for (int i = 0; i < columns; ++i) {
                switch (sqlite3_column_type(rows, i)) {
                    case SQLITE_INTEGER:
                        sum += sqlite3_column_int64(rows, i);
                        break;
                    case SQLITE_FLOAT:
                        sum += static_cast<long long>(sqlite3_column_double(rows, i));
                        break;
                    case SQLITE_TEXT:
                        sum += sqlite3_column_text(rows, i)[0];
                        break;
                    default:
                        break;
                }
            }
            ++figures.rows;
        }
        sqlite3_finalize(rows);
    }
    figures.seconds = secondsSince(start);
    // Keeps the reading from being optimised away.
    if (sum == 42)
        figures.seconds += 1e-12;
    return figures;
}

}  // namespace rackbook
