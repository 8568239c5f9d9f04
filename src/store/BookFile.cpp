#include "store/BookFile.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>
#include <QLockFile>
#include <algorithm>
#include <ctime>

#include "base/Error.h"
#include "base/Files.h"
#include "store/BookInner.h"
#include "store/Migration.h"
#include "store/NewBook.h"

namespace rackbook {

namespace {

constexpr std::int64_t applicationId = 0x5261636b;

// Whether a lock says all that QLockFile writes into it: process, program, machine, and what tells
// machines and their starts apart, a line each.
bool isWritten(int file) {
    char text[1024];
    const ssize_t size = pread(file, text, sizeof text, 0);
    return size > 0 && std::count(text, text + size, '\n') >= 5;
}

// A process that was ended before it had said in its lock who it is left one that looks held for
// ever; the system knows better. One that is made just now is given the time to be filled in.
void removeHalfLock(const std::string& path) {
    constexpr time_t youngest_s = 2;
    const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
    struct stat there;
    if (file >= 0 && !isWritten(file) && fstat(file, &there) == 0 &&
        time(nullptr) - there.st_mtime >= youngest_s && flock(file, LOCK_EX | LOCK_NB) == 0)
        unlink(path.c_str());
    if (file >= 0)
        close(file);
}

bool tryFor(QLockFile& lock, const std::string& path, int wait_ms) {
    constexpr int step_ms = 500;
    for (int left_ms = wait_ms;; left_ms -= step_ms) {
        if (lock.tryLock(std::clamp(left_ms, 0, step_ms)))
            return true;
        if (lock.error() != QLockFile::LockFailedError)
            return false;
        removeHalfLock(path);
        if (left_ms <= 0)
            return lock.tryLock(0);
    }
}

}  // namespace

std::unique_ptr<QLockFile> lockForWriting(const BookOptions& options) {
    // A link to a book leads to the book's own lock.
    const std::string target =
        QFileInfo(QString::fromStdString(options.path)).canonicalFilePath().toStdString();
    const std::string path = (target.empty() ? options.path : target) + ".lock";
    auto lock = std::make_unique<QLockFile>(QString::fromStdString(path));
    // Age says nothing about a writer; a dead process on this machine is noticed anyway.
    lock->setStaleLockTime(0);
    if (tryFor(*lock, path, options.wait_s * 1000))
        return lock;
    if (lock->error() != QLockFile::LockFailedError)
        throw StoreError(options.path, "its folder cannot be written",
                         "Check the permissions of the folder and the space on the disk.");
    qint64 process = 0;
    QString host;
    QString program;
    std::string holder = "another program";
    if (lock->getLockInfo(&process, &host, &program))
        holder = "process " + std::to_string(process) + " (" + program.toStdString() + ") on " +
                 host.toStdString();
    throw StoreError(options.path,
                     "it is being written by " + holder + ", for longer than " +
                         std::to_string(options.wait_s) + " s",
                     "Wait for it to finish, or give a longer --wait. Where you are sure that it "
                     "runs no more, remove " +
                         path + ".");
}

namespace {

void requireBook(const Database& database, const std::string& path) {
    if (database.wholeOf("PRAGMA application_id") != applicationId)
        throw StoreError(path, "it is not a book",
                         "Name a book made by rackbook begin; nothing was changed.");
    const std::int64_t version = database.wholeOf("PRAGMA user_version");
    if (version < 1)
        throw StoreError(path, "it is not a book, or its making was not finished",
                         "Name a book made by rackbook begin; nothing was changed.");
    if (version > bookVersion)
        throw StoreError(path,
                         "it was written by a newer Rackbook (version " + std::to_string(version) +
                             " of the tables; this program knows " + std::to_string(bookVersion) +
                             ")",
                         "Use the newer program; nothing was changed.");
}

void requireFile(const std::string& path) {
    if (isFolder(path))
        throw StoreError(path, "it is a folder", "Name the book's file with --book.");
    if (!fileExists(path))
        throw StoreError(path, "there is no book here",
                         "Make one with rackbook begin, or name one with --book.");
}

}  // namespace

void requireFreeName(const std::string& path) {
    if (fileExists(path))
        throw StoreError(path, "something of that name is there already",
                         "Choose another name with --book.");
}

void configure(Database& database) {
    database.execute("PRAGMA foreign_keys = ON");
    database.execute("PRAGMA synchronous = FULL");
    database.execute("PRAGMA trusted_schema = OFF");
    database.execute("PRAGMA cache_size = -65536");
}

namespace {

bool isEarlier(const Database& database) {
    return database.wholeOf("PRAGMA user_version") < bookVersion;
}

// A book of an earlier version as it would be in this one; the file stays as it is.
std::unique_ptr<Database> broughtUpInMemory(const Database& earlier, const BookOptions& options) {
    auto database = std::make_unique<Database>(Database::copyInMemory(earlier));
    migrate(*database, options.schemaFolder, bookVersion);
    return database;
}

std::unique_ptr<Database> openReadable(const BookOptions& options) {
    try {
        auto database =
            std::make_unique<Database>(options.path, OpenMode::read, options.wait_s * 1000);
        database->execute("PRAGMA query_only = ON");
        requireBook(*database, options.path);
        database->wholeOf("SELECT count(*) FROM sqlite_schema");
        return database;
    } catch (const StoreError&) {
        // Where the folder cannot be written, the side files of a shared book cannot be made. A
        // book without a log beside it is whole, and nobody can change it under our eyes.
        const std::string log = options.path + "-wal";
        const bool frozen =
            !fileExists(log) && !QFile::permissions(QString::fromStdString(folderOf(options.path)))
                                     .testFlag(QFileDevice::WriteUser);
        if (!frozen)
            throw;
    }
    auto database =
        std::make_unique<Database>(options.path, OpenMode::readUnchanging, options.wait_s * 1000);
    requireBook(*database, options.path);
    return database;
}

}  // namespace

BookFile::Inner::Inner(const BookOptions& bookOptions) : options(bookOptions) {}

BookFile::Inner::~Inner() = default;

BookFile::BookFile(std::shared_ptr<Inner> inner) : m_inner(std::move(inner)) {}

BookFile::BookFile(BookFile&&) noexcept = default;
BookFile& BookFile::operator=(BookFile&&) noexcept = default;
BookFile::~BookFile() = default;

const std::string& BookFile::path() const {
    return m_inner->options.path;
}

BookFile BookFile::create(const BookOptions& options) {
    NewBook(options).finish();
    return openToWrite(options);
}

BookFile BookFile::openToRead(const BookOptions& options) {
    requireFile(options.path);
    auto inner = std::make_shared<Inner>(options);
    inner->database = openReadable(options);
    if (isEarlier(*inner->database))
        inner->database = broughtUpInMemory(*inner->database, options);
    configure(*inner->database);
    // Everything that is read through this handle belongs to one state of the book.
    inner->database->execute("BEGIN");
    return BookFile(std::move(inner));
}

BookFile BookFile::openToTry(const BookOptions& options) {
    requireFile(options.path);
    auto inner = std::make_shared<Inner>(options);
    inner->database = broughtUpInMemory(*openReadable(options), options);
    configure(*inner->database);
    return BookFile(std::move(inner));
}

BookFile BookFile::openToWrite(const BookOptions& options) {
    requireFile(options.path);
    auto inner = std::make_shared<Inner>(options);
    inner->writerLock = lockForWriting(options);
    inner->database =
        std::make_unique<Database>(options.path, OpenMode::write, options.wait_s * 1000);
    requireBook(*inner->database, options.path);
    // SQLite opens a file that may only be read all the same.
    if (inner->database->isReadOnly())
        throw StoreError(options.path, "the file cannot be written",
                         "Check its permissions and those of its folder.");
    if (options.onlyTries && isEarlier(*inner->database))
        inner->database = broughtUpInMemory(*inner->database, options);
    else
        inner->database->execute("PRAGMA journal_mode = WAL");
    configure(*inner->database);
    migrate(*inner->database, options.schemaFolder, bookVersion);
    return BookFile(std::move(inner));
}

}  // namespace rackbook
