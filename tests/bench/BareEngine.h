// The same work through the SQLite C API alone, for comparison.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

struct BareFigures {
    double seconds = 0;
    long long rows = 0;
};

// Copies every row of the book into memory, then inserts them into a new file with the same tables
// and settings in one transaction. Only the inserting and the commit are timed.
BareFigures bareInsert(const std::string& bookPath, const std::vector<std::string>& sqlPaths,
                       const std::string& newPath);

// Inserts the newest rows of one table of the book and of its list table once more, under new
// keys, in a transaction of their own: what one daily verb writes. The book is changed.
BareFigures bareDailyInsert(const std::string& bookPath, int times);

// Takes such rows out again, so that the book is what its journal says.
void removeDailyInserts(const std::string& bookPath);

// Steps through all rows of the statements and reads every column.
BareFigures bareScan(const std::string& bookPath, const std::vector<std::string>& statements);

}  // namespace rackbook
