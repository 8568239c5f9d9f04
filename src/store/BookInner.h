// What a BookFile holds. Private to store/.
#pragma once

#include <memory>

#include "store/BookFile.h"
#include "store/Sqlite.h"

class QLockFile;

namespace rackbook {

struct BookFile::Inner {
    explicit Inner(const BookOptions& bookOptions);
    ~Inner();

    BookOptions options;
    std::unique_ptr<QLockFile> writerLock;  // absent for readers; outlives the database handle
    std::unique_ptr<Database> database;
};

// Held for as long as it lives; waits options.wait_s for another process. Throws StoreError.
std::unique_ptr<QLockFile> lockForWriting(const BookOptions& options);

// Throws StoreError where something is there.
void requireFreeName(const std::string& path);

// What every handle on a book is set to.
void configure(Database& database);

}  // namespace rackbook
