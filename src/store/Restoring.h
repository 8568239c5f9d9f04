// Putting another book in the place of one that is in use.
#pragma once

#include "store/BookFile.h"

namespace rackbook {

// Makes of `book` what `other` is, in one transaction: whoever reads it sees what it was, or all of
// what it is now; a cut of the power leaves one of the two. Throws StoreError, also where what lies
// there is too damaged to be written over so.
// Pre: `book` was opened to write and nothing is open on it.
void becomeEqual(BookFile& book, const BookFile& other);

}  // namespace rackbook
