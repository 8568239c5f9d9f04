// A book that goes again unless what belongs into it came in.
#pragma once

#include <optional>
#include <string>

#include "store/BookFile.h"

namespace rackbook {

class NewBook {
public:
    // Throws like BookFile::create.
    explicit NewBook(const BookOptions& options)
        : m_path(options.path), m_book(BookFile::create(options)) {}
    // Takes the file away where keep() was not reached.
    ~NewBook();
    NewBook(const NewBook&) = delete;
    NewBook& operator=(const NewBook&) = delete;

    BookFile& book() { return *m_book; }
    BookFile keep();

private:
    std::string m_path;
    std::optional<BookFile> m_book;
};

}  // namespace rackbook
