#include "store/Restoring.h"

#include "store/BookInner.h"

namespace rackbook {

void becomeEqual(BookFile& book, const BookFile& other) {
    book.inner().database->become(*other.inner().database);
}

}  // namespace rackbook
