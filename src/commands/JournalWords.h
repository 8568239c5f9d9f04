// The journal in words.
#pragma once

#include <string>

#include "base/Tree.h"
#include "store/BookFile.h"
#include "store/JournalQuery.h"

namespace rackbook {

const char* wordOf(JournalAction action);  // "new", "changed", "corrected", "struck out"

// "2026-03-28 19:00", on the clocks of that time zone.
std::string recordedWords(const std::string& recordedAt, const std::string& timeZone);
// "2026-03-28 18:00 UTC": where two books speak, or one that cannot say its time zone.
std::string recordedInUtc(const std::string& recordedAt);

// The time zone of the book; UTC where it does not say one.
std::string timeZoneOf(const BookFile& book);

// Whoever recorded it, or that nobody was named.
std::string recordedByWords(const std::string& recordedBy);

// What was recorded together, in short: "pull p1 new, 2 impressions changed".
std::string intakeInShort(const std::vector<JournalEntry>& entries);

Tree treeOf(const JournalEntry& entry);

}  // namespace rackbook
