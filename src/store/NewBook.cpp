#include "store/NewBook.h"

#include <QFile>
#include <QLockFile>
#include <cstdio>

#include "base/Error.h"
#include "base/Files.h"
#include "base/UnfinishedFile.h"
#include "store/BookInner.h"
#include "store/Migration.h"

namespace rackbook {

namespace {

constexpr const char* sideFiles[] = {"-wal", "-shm", "-journal"};

void removeFile(const std::string& path) {
    QFile::remove(QString::fromStdString(path));
}

void removeSideFiles(const std::string& path) {
    for (const char* ending : sideFiles)
        removeFile(path + ending);
}

StoreError notNamed(const std::string& path) {
    return StoreError(path, "the book cannot be given its name",
                      "Check the permissions of the folder.");
}

}  // namespace

NewBook::NewBook(const BookOptions& options) : NewBook(options, nullptr) {}

NewBook::NewBook(const BookOptions& options, const BookFile& from) : NewBook(options, &from) {}

NewBook::NewBook(const BookOptions& options, const BookFile* from)
    : m_path(options.path), m_unfinished(options.path + ".unfinished") {
    if (from == nullptr)
        requireFreeName(m_path);
    auto inner = std::make_shared<BookFile::Inner>(options);
    inner->writerLock = lockForWriting(options);
    // Another process may have made it while this one waited for the lock.
    if (from == nullptr)
        requireFreeName(m_path);
    remove();
    try {
        inner->database =
            std::make_unique<Database>(m_unfinished, OpenMode::create, options.wait_s * 1000);
        if (from != nullptr)
            inner->database->become(*from->inner().database);
        inner->database->execute("PRAGMA journal_mode = WAL");
        configure(*inner->database);
        migrate(*inner->database, options.schemaFolder, bookVersion);
    } catch (...) {
        inner->database.reset();
        remove();
        throw;
    }
    m_book.reset(new BookFile(std::move(inner)));
}

NewBook::~NewBook() {
    if (!m_book)
        return;
    // The lock goes last.
    m_book->inner().database.reset();
    remove();
}

void NewBook::remove() {
    removeFile(m_unfinished);
    removeSideFiles(m_unfinished);
}

// Closing brings everything into the one file; where it could not, a log stays beside it.
void NewBook::close() {
    m_book->inner().database.reset();
    if (fileExists(m_unfinished + "-wal"))
        throw StoreError(m_path, "the new book cannot be written to the end",
                         "Check the disk and the space on it.");
    // Says nothing once nobody has the book open; SQLite tries once, and does not say.
    removeFile(m_unfinished + "-shm");
    syncFile(m_unfinished);
}

void NewBook::open() {
    BookFile::Inner& inner = m_book->inner();
    inner.database =
        std::make_unique<Database>(m_unfinished, OpenMode::write, inner.options.wait_s * 1000);
    configure(*inner.database);
}

void NewBook::settle() {
    close();
    open();
}

void NewBook::restAlone() {
    m_book->inner().database->execute("PRAGMA journal_mode = DELETE");
}

void NewBook::finish() {
    close();
    // Does not write over anything.
    if (!QFile::rename(QString::fromStdString(m_unfinished), QString::fromStdString(m_path)))
        throw notNamed(m_path);
    m_book.reset();
    syncFolder(folderOf(m_path));
}

void NewBook::finishInPlace() {
    close();
    // A log that was left belongs to what goes, and would be read into what comes.
    removeSideFiles(m_path);
    syncFolder(folderOf(m_path));
    if (std::rename(m_unfinished.c_str(), m_path.c_str()) != 0)
        throw notNamed(m_path);
    m_book.reset();
    syncFolder(folderOf(m_path));
}

}  // namespace rackbook
