// The records of one kind that a listing verb is about, by the filters that all of them take.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "commands/Command.h"
#include "records/Record.h"
#include "store/BookFile.h"

namespace rackbook {

// --edition, --place, --holder, --verdict and --during, for the descriptions of such verbs.
std::vector<OptionSpec> recordFilters();

// All of that kind that every filter given lets through. Throws UsageError where records of the
// kind have nothing of what a filter asks for.
std::vector<Record> wantedRecords(const CommandContext& context, const BookFile& book,
                                  RecordKind kind);

// The ids of those; nothing where records of the kind cannot be chosen by a filter that is given.
// Throws UsageError where what a filter names is not in the book.
std::optional<std::set<std::string>> idsWanted(const CommandContext& context, const BookFile& book,
                                               RecordKind kind);

}  // namespace rackbook
