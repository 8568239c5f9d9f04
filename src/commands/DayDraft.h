// The entries of a day that are not recorded yet, in a file beside the book.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "commands/DayEntries.h"
#include "store/JournalEnd.h"

namespace rackbook {

class DayDraft {
public:
    // Reads what an earlier conversation left. Throws InputError for a file that is no draft.
    explicit DayDraft(const std::string& bookPath);

    // Where the draft of that book lies.
    static std::string pathFor(const std::string& bookPath) { return bookPath + ".day"; }

    const std::string& path() const { return m_path; }
    const std::vector<EntryWords>& entries() const { return m_entries; }

    // Each is on the disk before it returns. Throws StoreError.
    void add(EntryWords entry);
    void removeLast();
    void clear();

    // Notes what the end of the journal will be once these entries are recorded. Whoever is ended
    // between that and clear() leaves a draft of what is in the book: wasRecorded() tells.
    void willEndAt(const JournalEnd& end);
    bool wasRecorded(const BookFile& book) const;

private:
    void save() const;

    std::string m_path;
    std::vector<EntryWords> m_entries;
    std::optional<JournalEnd> m_end;
};

// The entries in the text of a day's log: one a line, "rackbook" before it or not; empty lines and
// those that begin with # are passed over. Each with the number of its line.
struct DayLine {
    int line = 0;
    EntryWords words;
};
std::vector<DayLine> dayLines(const std::string& text);

}  // namespace rackbook
