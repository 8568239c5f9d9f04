// The journal in words.
#pragma once

#include <string>

#include "base/Tree.h"
#include "store/JournalQuery.h"

namespace rackbook {

const char* wordOf(JournalAction action);  // "new", "changed", "corrected", "struck out"

// "2026-03-28 18:00 UTC"
std::string recordedWords(const std::string& recordedAt);

// What was recorded together, in short: "1 pull new, 2 impressions changed".
std::string intakeInShort(const std::vector<JournalEntry>& entries);

Tree treeOf(const JournalEntry& entry);

}  // namespace rackbook
