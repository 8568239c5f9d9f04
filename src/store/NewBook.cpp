#include "store/NewBook.h"

#include <filesystem>

namespace rackbook {

NewBook::~NewBook() {
    if (!m_book)
        return;
    m_book.reset();
    std::error_code ignored;
    for (const char* ending : {"", "-wal", "-shm"})
        std::filesystem::remove(m_path + ending, ignored);
}

BookFile NewBook::keep() {
    BookFile book = std::move(*m_book);
    m_book.reset();
    return book;
}

}  // namespace rackbook
