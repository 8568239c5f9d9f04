// A book: one SQLite file with a studio's records. Opening, making, migrating, locking.
#pragma once

#include <memory>
#include <string>

namespace rackbook {

// The version of the tables that this program writes, kept in the file's user_version.
constexpr int bookVersion = 5;

struct BookOptions {
    std::string path;
    std::string schemaFolder;  // where sql/0001.sql … lie
    int wait_s = 5;            // how long a book that another process writes is waited for
    bool onlyTries = false;    // nothing will be kept: an earlier version is brought up in memory
};

// Owns the file's handle; closing the last one brings everything back into the one file. Movable,
// not copyable, not for use by several threads.
class BookFile {
public:
    // Throws StoreError where a file of that name exists.
    static BookFile create(const BookOptions& options);
    // Readers never wait for writers. Throws StoreError for a file that is no book or that a
    // newer version wrote.
    static BookFile openToRead(const BookOptions& options);
    // One writer at a time, over all processes: throws StoreError naming the holder when
    // options.wait_s have passed. Older versions of the tables are brought up first, in memory only
    // where nothing will be kept.
    static BookFile openToWrite(const BookOptions& options);

    // The book as it is now, in memory: what is taken into it is gone with the handle, and nobody
    // waits for it. Throws like openToRead.
    static BookFile openToTry(const BookOptions& options);

    BookFile(BookFile&&) noexcept;
    BookFile& operator=(BookFile&&) noexcept;
    ~BookFile();

    const std::string& path() const;

    // Another handle on this open file: both see the same transaction.
    BookFile sameBook() const { return BookFile(m_inner); }

    // For the rest of store/.
    struct Inner;
    Inner& inner() const { return *m_inner; }

private:
    friend class NewBook;
    explicit BookFile(std::shared_ptr<Inner> inner);
    std::shared_ptr<Inner> m_inner;
};

}  // namespace rackbook
