// A thin owner of SQLite handles. Private to store/: no other room includes it.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace rackbook {

// One prepared statement. Parameters count from 1, columns from 0. Not thread safe; must not
// outlive its Database.
class Statement {
public:
    Statement() = default;
    Statement(sqlite3* database, std::string_view sql);

    void bind(int parameter, std::int64_t value);
    void bind(int parameter, double value);
    // The bytes must stay alive until the statement was run.
    void bindText(int parameter, std::string_view text);
    void bindBlob(int parameter, std::string_view bytes);
    void bindNull(int parameter);

    // Runs to the next row; false at the end. Throws StoreError.
    bool step();
    // Runs a statement that gives no rows, and makes it ready for the next use.
    void run();
    void reset();

    std::int64_t whole(int column) const;
    double real(int column) const;
    std::string text(int column) const;
    // Valid until the next step or reset; text and blobs alike.
    std::string_view view(int column) const;
    bool isNull(int column) const;

private:
    void checkBind(int code);

    struct Finalize {
        void operator()(sqlite3_stmt* statement) const;
    };
    std::unique_ptr<sqlite3_stmt, Finalize> m_statement;
};

// Readers open for writing too where they may, but never write: a handle that can only read leaves
// the side files of the log behind when it closes. readUnchanging is for folders where nothing can
// be written.
enum class OpenMode { read, readUnchanging, write, create };

class Database {
public:
    // Throws StoreError. `wait_ms` bounds how long a busy book is waited for.
    Database(const std::string& path, OpenMode mode, int wait_ms);

    // A copy of another, held in memory. Throws StoreError.
    static Database copyInMemory(const Database& from);

    // Takes over everything that `from` holds, in one transaction: readers of this one see it as it
    // was before, or all of it. Throws StoreError.
    void become(const Database& from);

    void execute(const std::string& sql);
    Statement prepare(std::string_view sql) const;
    // The first column of the first row.
    std::int64_t wholeOf(const std::string& sql) const;
    std::string textOf(const std::string& sql) const;
    // References whose check was put off to the commit and that lead nowhere now.
    bool hasBrokenReferences() const;
    bool isReadOnly() const;
    bool isInTransaction() const;
    const std::string& path() const { return m_path; }

private:
    struct Close {
        void operator()(sqlite3* database) const;
    };
    std::string m_path;
    std::unique_ptr<sqlite3, Close> m_database;
};

// Rolls back when it goes out of scope without commit(). One that writes within another is a part
// of it: what it commits is kept when the other is.
class Transaction {
public:
    explicit Transaction(Database& database, bool writes = true);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();

private:
    Database& m_database;
    bool m_open = true;
    bool m_isWithin = false;
};

}  // namespace rackbook
