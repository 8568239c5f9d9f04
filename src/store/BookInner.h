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

}  // namespace rackbook
