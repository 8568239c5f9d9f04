#include "commands/JournalWords.h"

#include <map>

#include "base/Clock.h"
#include "base/Edtf.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/PlainFields.h"
#include "store/RecordReader.h"

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

std::string recordedWords(const std::string& recordedAt, const std::string& timeZone) {
    constexpr std::size_t minutes = 16;  // of "2026-03-28T18:00:00Z"
    if (recordedAt.size() < minutes)
        return recordedAt;
    const CivilMinute utc = EdtfDate::parse(recordedAt.substr(0, minutes)).earliest();
    std::string local = formatMinute(civilMinuteAt(utc * 60, timeZone));
    local[local.find('T')] = ' ';
    return local;
}

std::string recordedInUtc(const std::string& recordedAt) {
    return recordedWords(recordedAt, "UTC") + " UTC";
}

std::string timeZoneOf(const BookFile& book) {
    return countOf(book, RecordKind::book) == 0 ? "UTC" : bookRecordOf(book).timeZone;
}

std::string recordedByWords(const std::string& recordedBy) {
    return recordedBy == nobodyNamed ? "somebody not named" : printable(recordedBy);
}

std::string intakeInShort(const std::vector<JournalEntry>& entries) {
    std::map<std::pair<RecordKind, JournalAction>, std::vector<std::string>> ids;
    for (const JournalEntry& entry : entries)
        ids[{entry.kind, entry.action}].push_back(entry.id);
    std::vector<std::string> parts;
    for (const auto& [what, some] : ids) {
        const std::string one = plainWord(textOf(what.first)) + " " + some.front();
        parts.push_back((some.size() == 1 ? one : countedKind(what.first, some.size())) + " " +
                        wordOf(what.second));
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
