// The records of one kind that a verb with --edition is about.
#pragma once

#include <vector>

#include "commands/Command.h"
#include "records/Record.h"
#include "store/BookFile.h"

namespace rackbook {

// All of that kind, or those of the edition that --edition names. Throws UsageError where such
// records belong to no edition.
std::vector<Record> wantedRecords(const CommandContext& context, const BookFile& book,
                                  RecordKind kind);

}  // namespace rackbook
