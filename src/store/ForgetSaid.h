// Taking out of a book what someone has the right to have forgotten. The entries of the journal
// stay where they are, with their hashes, so that its chain can be proved as before.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "records/RecordKind.h"
#include "store/BookFile.h"

namespace rackbook {

struct RecordName {
    RecordKind kind = RecordKind::party;
    std::string id;
};

// What is deleted from now on is overwritten in the file. Before the transaction that forgets.
void overwriteWhatGoes(BookFile& book);

// Takes payload and salt out of every entry about these records but the one that their present
// state comes from; of a record that was struck out, out of all. How many entries that were.
// Pre: `book` was opened to write; within a JointIntake. Throws StoreError.
std::size_t forgetSaid(BookFile& book, const std::vector<RecordName>& records);

// Writes the file anew without anything that was ever deleted from it, and empties the log beside
// it. False where another program that has the book open keeps the old bytes alive. Throws
// StoreError; the book is sound then too. Pre: opened to write, no transaction is open.
bool dropOldBytes(BookFile& book);

}  // namespace rackbook
