// Rows read out of the bytes of a SQLite file without asking what its pages say about one another,
// for files that SQLite itself cannot read any more. By the published description of the file
// format (sqlite.org/fileformat2.html). Private to store/.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <variant>
#include <vector>

namespace rackbook {

// Texts and blobs are both bytes.
using ScannedValue = std::variant<std::monostate, std::int64_t, double, std::string>;

struct ScannedRow {
    std::int64_t rowid = 0;
    std::vector<ScannedValue> values;
};

// The bytes of a database with what was committed in the write-ahead log beside it.
struct ScannedFile {
    std::string bytes;
    std::size_t pageSize_B = 4096;
    bool isCut = false;         // it says that it has more pages
    bool isLogDamaged = false;  // what came later in the log is not known
};
ScannedFile withLog(std::string file, const std::string& log);

// Whether SQLite itself finds nothing wrong in those bytes.
bool isInOrder(const ScannedFile& file);

// How many columns a row must have, and what its first two must look like: tells cells from bytes
// that only look like one, before anything else is read.
struct RowShape {
    std::size_t columns = 0;
    std::function<bool(std::uint64_t first, std::uint64_t second)> fits;  // serial types
};

// Calls see() for whatever at any place of any page reads as a cell of that shape: once or more
// often, and for things that never were one. Whoever calls judges.
void scanRows(const ScannedFile& file, const RowShape& shape,
              const std::function<void(ScannedRow&)>& see);

}  // namespace rackbook
