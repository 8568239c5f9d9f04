// A journal as text: one JSON object on a line for each entry (schema/README.md describes it).
#pragma once

#include <string>
#include <string_view>

#include "records/JournalRow.h"

namespace rackbook {

// Without the line's end.
std::string journalLine(const JournalRow& row);

// Throws InputError naming the file and the line where it is not what journalLine writes.
JournalRow journalRowFrom(std::string_view text, const std::string& file, int line);

}  // namespace rackbook
