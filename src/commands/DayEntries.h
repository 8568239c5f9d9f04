// The entries of a day's log, run one after the other on one book.
#pragma once

#include <string>
#include <vector>

#include "commands/Command.h"
#include "store/BookFile.h"

namespace rackbook {

// A verb and its words: {"pull", "EEL", "3", "1-18"}.
using EntryWords = std::vector<std::string>;

// The verbs that may stand in a day's log.
bool isEntryVerb(const CommandSpec& spec);

// Throws UsageError where the verb is none of those, or the words name a book or are a trial of
// their own.
const Command& entryVerb(const EntryWords& words);

// Runs the entry on `book`, which was opened to write or to try, as one that is kept together with
// others. Recorded by whoever `context` names, unless the entry says it. Throws what the verb
// throws; then nothing of it was taken.
void runEntry(const CommandContext& context, const BookFile& book, const EntryWords& words,
              Console& console);

}  // namespace rackbook
