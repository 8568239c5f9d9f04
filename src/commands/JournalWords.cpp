#include "commands/JournalWords.h"

#include <map>

#include "base/Text.h"

namespace rackbook {

const char* wordOf(JournalAction action) {
    switch (action) {
        case JournalAction::update:
            return "changed";
        case JournalAction::correct:
            return "corrected";
        case JournalAction::strike:
            return "struck out";
        case JournalAction::record:
            break;
    }
    return "new";
}

std::string recordedWords(const std::string& recordedAt) {
    constexpr std::size_t minutes = 16;  // of "2026-03-28T18:00:00Z"
    if (recordedAt.size() < minutes)
        return recordedAt;
    return recordedAt.substr(0, 10) + " " + recordedAt.substr(11, 5) + " UTC";
}

std::string intakeInShort(const std::vector<JournalEntry>& entries) {
    std::map<std::pair<RecordKind, JournalAction>, std::vector<std::string>> ids;
    for (const JournalEntry& entry : entries)
        ids[{entry.kind, entry.action}].push_back(entry.id);
    std::vector<std::string> parts;
    for (const auto& [what, some] : ids) {
        const std::string kind = textOf(what.first);
        parts.push_back((some.size() == 1 ? kind + " " + some.front()
                                          : std::to_string(some.size()) + " of kind " + kind) +
                        " " + wordOf(what.second));
    }
    return joined(parts, ", ");
}

Tree treeOf(const JournalEntry& entry) {
    Tree tree;
    tree.set("entry", entry.entry);
    tree.set("intake", entry.intake);
    tree.set("recordedAt", entry.recordedAt);
    tree.set("recordedBy", entry.recordedBy);
    tree.set("action", wordOf(entry.action));
    tree.set("kind", textOf(entry.kind));
    tree.set("id", entry.id);
    if (entry.reason)
        tree.set("reason", *entry.reason);
    return tree;
}

}  // namespace rackbook
