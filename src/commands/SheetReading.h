// What a sheet reads of a book.
#pragma once

#include "commands/SheetKinds.h"
#include "store/BookFile.h"

namespace rackbook {

// The records that a sheet of that kind about that is made from, and the record inside it: all of
// the book, or, where the sheet says nothing of the rest, what belongs to its subject.
RecordSet recordsForSheet(const BookFile& book, const SheetKind& kind, const SheetSubject& subject,
                          CivilMinute asOf);

}  // namespace rackbook
