#include "store/Sqlite.h"

#include <sqlite3.h>

#include "base/Error.h"

namespace rackbook {

namespace {

// The disk did not say that the last bytes of a transaction will stay, and they may all the same.
bool isDoubtful(int code) {
    return code == SQLITE_IOERR_FSYNC || code == SQLITE_IOERR_DIR_FSYNC;
}

// What to do about each kind of failure that a person can mend.
std::string remedyFor(int code) {
    if (isDoubtful(code))
        return "Check the disk. Whether it was recorded is not sure: look with rackbook history "
               "before giving the command again.";
    switch (code & 0xFF) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return "Another program holds the book; close it and try again.";
        case SQLITE_FULL:
            return "The disk is full; make room and try again. The book is unchanged.";
        case SQLITE_READONLY:
        case SQLITE_PERM:
        case SQLITE_CANTOPEN:
        case SQLITE_AUTH:
            return "Check the name, the permissions of the file and of its folder.";
        case SQLITE_NOTADB:
            return "Name a book made by rackbook begin.";
        case SQLITE_CORRUPT:
            return "Keep the file as it is and restore the last backup.";
        case SQLITE_IOERR:
            return "Check the disk and the space on it. The book is unchanged.";
        default:
            return "The book is unchanged.";
    }
}

[[noreturn]] void fail(sqlite3* database, int code) {
    const char* file = sqlite3_db_filename(database, "main");
    const int whole = sqlite3_extended_errcode(database);
    throw StoreError(file != nullptr && *file != '\0' ? file : "the book", sqlite3_errmsg(database),
                     remedyFor(isDoubtful(whole) ? whole : code));
}

void check(sqlite3* database, int code) {
    if (code != SQLITE_OK)
        fail(database, code);
}

}  // namespace

void Statement::Finalize::operator()(sqlite3_stmt* statement) const {
    sqlite3_finalize(statement);
}

Statement::Statement(sqlite3* database, std::string_view sql) {
    sqlite3_stmt* statement = nullptr;
    check(database, sqlite3_prepare_v3(database, sql.data(), static_cast<int>(sql.size()),
                                       SQLITE_PREPARE_PERSISTENT, &statement, nullptr));
    m_statement.reset(statement);
}

void Statement::checkBind(int code) {
    check(sqlite3_db_handle(m_statement.get()), code);
}

void Statement::bind(int parameter, std::int64_t value) {
    checkBind(sqlite3_bind_int64(m_statement.get(), parameter, value));
}

void Statement::bind(int parameter, double value) {
    checkBind(sqlite3_bind_double(m_statement.get(), parameter, value));
}

void Statement::bindText(int parameter, std::string_view text) {
    checkBind(sqlite3_bind_text64(m_statement.get(), parameter, text.data(), text.size(),
                                  SQLITE_STATIC, SQLITE_UTF8));
}

void Statement::bindBlob(int parameter, std::string_view bytes) {
    checkBind(sqlite3_bind_blob64(m_statement.get(), parameter, bytes.data(), bytes.size(),
                                  SQLITE_STATIC));
}

void Statement::bindNull(int parameter) {
    checkBind(sqlite3_bind_null(m_statement.get(), parameter));
}

bool Statement::step() {
    const int code = sqlite3_step(m_statement.get());
    if (code == SQLITE_ROW)
        return true;
    if (code == SQLITE_DONE)
        return false;
    sqlite3* database = sqlite3_db_handle(m_statement.get());
    sqlite3_reset(m_statement.get());
    fail(database, code);
}

void Statement::run() {
    while (step()) {
    }
    reset();
}

void Statement::reset() {
    sqlite3_reset(m_statement.get());
}

std::int64_t Statement::whole(int column) const {
    return sqlite3_column_int64(m_statement.get(), column);
}

double Statement::real(int column) const {
    return sqlite3_column_double(m_statement.get(), column);
}

std::string Statement::text(int column) const {
    return std::string(view(column));
}

std::string_view Statement::view(int column) const {
    const void* bytes = sqlite3_column_blob(m_statement.get(), column);
    if (bytes == nullptr)
        return {};
    return {static_cast<const char*>(bytes),
            static_cast<std::size_t>(sqlite3_column_bytes(m_statement.get(), column))};
}

bool Statement::isNull(int column) const {
    return sqlite3_column_type(m_statement.get(), column) == SQLITE_NULL;
}

void Database::Close::operator()(sqlite3* database) const {
    sqlite3_close_v2(database);
}

Database::Database(const std::string& path, OpenMode mode, int wait_ms) : m_path(path) {
    int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
    std::string name = path;
    if (mode == OpenMode::create)
        flags |= SQLITE_OPEN_CREATE;
    if (mode == OpenMode::readUnchanging) {
        flags =
            SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_URI;
        name = "file:";
        for (const char c : path) {
            if (c == '?' || c == '#' || c == '%') {
                static constexpr char digits[] = "0123456789abcdef";
                name += '%';
                name += digits[(static_cast<unsigned char>(c)) >> 4];
                name += digits[static_cast<unsigned char>(c) & 0xF];
            } else {
                name += c;
            }
        }
        name += "?immutable=1";
    }
    sqlite3* database = nullptr;
    const int code = sqlite3_open_v2(name.c_str(), &database, flags, nullptr);
    m_database.reset(database);
    if (code != SQLITE_OK)
        throw StoreError(path, database != nullptr ? sqlite3_errmsg(database) : "out of memory",
                         remedyFor(code));
    sqlite3_busy_timeout(database, wait_ms);
}

Database Database::copyInMemory(const Database& from) {
    Database copy(":memory:", OpenMode::create, 0);
    copy.become(from);
    return copy;
}

void Database::become(const Database& from) {
    sqlite3_backup* backup =
        sqlite3_backup_init(m_database.get(), "main", from.m_database.get(), "main");
    if (backup == nullptr)
        fail(m_database.get(), sqlite3_errcode(m_database.get()));
    const int code = sqlite3_backup_step(backup, -1);
    sqlite3_backup_finish(backup);
    // Which of the two failed, SQLite does not say.
    if (code != SQLITE_DONE)
        throw StoreError(m_path, std::string("it cannot be copied: ") + sqlite3_errstr(code),
                         remedyFor(code));
}

void Database::execute(const std::string& sql) {
    const int code = sqlite3_exec(m_database.get(), sql.c_str(), nullptr, nullptr, nullptr);
    check(m_database.get(), code);
}

Statement Database::prepare(std::string_view sql) const {
    return Statement(m_database.get(), sql);
}

std::int64_t Database::wholeOf(const std::string& sql) const {
    Statement statement = prepare(sql);
    return statement.step() ? statement.whole(0) : 0;
}

std::string Database::textOf(const std::string& sql) const {
    Statement statement = prepare(sql);
    return statement.step() ? statement.text(0) : std::string();
}

bool Database::isInTransaction() const {
    return sqlite3_get_autocommit(m_database.get()) == 0;
}

bool Database::isReadOnly() const {
    return sqlite3_db_readonly(m_database.get(), "main") == 1;
}

bool Database::hasBrokenReferences() const {
    int broken = 0;
    int highest = 0;
    sqlite3_db_status(m_database.get(), SQLITE_DBSTATUS_DEFERRED_FKS, &broken, &highest, 0);
    return broken != 0;
}

Transaction::Transaction(Database& database, bool writes) : m_database(database) {
    m_isWithin = m_database.isInTransaction();
    // A reader sees one state of the book for as long as it has it open.
    m_open = writes || !m_isWithin;
    if (m_open)
        m_database.execute(m_isWithin ? "SAVEPOINT part" : writes ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
    if (!m_open)
        return;
    try {
        m_database.execute(m_isWithin ? "ROLLBACK TO part" : "ROLLBACK");
        if (m_isWithin)
            m_database.execute("RELEASE part");
    } catch (const StoreError&) {
        // SQLite has rolled back by itself after a full disk or an I/O error.
    }
}

void Transaction::commit() {
    m_database.execute(m_isWithin ? "RELEASE part" : "COMMIT");
    m_open = false;
}

}  // namespace rackbook
