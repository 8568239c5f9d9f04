// A book in the making.
#pragma once

#include <memory>

#include "store/BookFile.h"

namespace rackbook {

// Lies beside its name, with ".unfinished" behind it, until finish(), so that a book of the right
// name is always a whole one; gone where finish() is not reached. Holds the lock of the name.
class NewBook {
public:
    // Empty, with the tables of this version. Throws StoreError where something of that name is
    // there, or another process makes or writes it.
    explicit NewBook(const BookOptions& options);
    // Equal to another book in all that it holds, as the other is read now.
    NewBook(const BookOptions& options, const BookFile& from);
    ~NewBook();
    NewBook(const NewBook&) = delete;
    NewBook& operator=(const NewBook&) = delete;

    // Open to write.
    BookFile& book() { return *m_book; }
    // Brings it to the disk and opens it anew, so that what is read now is what lies there. Pre: no
    // other handle on the book is alive. Throws StoreError.
    void settle();
    // For a book that is kept and not worked in: reading it leaves nothing beside it, and it can be
    // read where nothing can be written. Whoever opens it to write makes it like others again.
    void restAlone();
    // Gives it its name. Pre: no other handle on the book is alive. Throws StoreError.
    void finish();
    // The same, in place of whatever has the name now.
    void finishInPlace();

private:
    NewBook(const BookOptions& options, const BookFile* from);
    void open();
    void close();
    void remove();

    std::string m_path;
    std::string m_unfinished;
    std::unique_ptr<BookFile> m_book;
};

}  // namespace rackbook
