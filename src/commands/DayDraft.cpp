#include "commands/DayDraft.h"

#include <QFile>
#include <sstream>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "commands/CommandLine.h"

namespace rackbook {

namespace {

constexpr std::size_t largestLog = 10'000'000;
constexpr const char* heading =
    "# Entries that are not recorded yet: rackbook day goes on with them.\n";

constexpr const char* endHeading = "# Being recorded, to end at journal entry ";

// "12 0a1b…"
std::optional<JournalEnd> endIn(const std::string& text) {
    const std::size_t at = text.find(std::string("\n") + endHeading);
    if (at == std::string::npos)
        return std::nullopt;
    std::istringstream words(text.substr(at + 1 + std::string(endHeading).size()));
    JournalEnd end;
    words >> end.entry >> end.hash;
    return words && end.entry > 0 ? std::optional(end) : std::nullopt;
}

}  // namespace

std::vector<DayLine> dayLines(const std::string& text) {
    std::vector<DayLine> lines;
    std::istringstream stream(text);
    std::string one;
    for (int number = 1; std::getline(stream, one); ++number) {
        if (!one.empty() && one.back() == '\r')
            one.pop_back();
        if (isBlank(one) || one[one.find_first_not_of(" \t")] == '#')
            continue;
        EntryWords words = wordsOfLine(one);
        if (!words.empty() && words.front() == "rackbook")
            words.erase(words.begin());
        if (!words.empty())
            lines.push_back({number, std::move(words)});
    }
    return lines;
}

DayDraft::DayDraft(const std::string& bookPath) : m_path(pathFor(bookPath)) {
    if (!fileExists(m_path))
        return;
    const std::string text = readFile(m_path, largestLog);
    if (invalidUtf8At(text))
        throw InputError(m_path, "it is not UTF-8 text",
                         "Remove it, or put it right; nothing in it was recorded.");
    for (DayLine& line : dayLines(text))
        m_entries.push_back(std::move(line.words));
    m_end = endIn(text);
}

void DayDraft::add(EntryWords entry) {
    m_entries.push_back(std::move(entry));
    m_end.reset();
    save();
}

void DayDraft::removeLast() {
    m_entries.pop_back();
    m_end.reset();
    if (m_entries.empty())
        clear();
    else
        save();
}

void DayDraft::willEndAt(const JournalEnd& end) {
    m_end = end;
    save();
}

bool DayDraft::wasRecorded(const BookFile& book) const {
    return m_end && holds(book, *m_end);
}

void DayDraft::clear() {
    m_entries.clear();
    m_end.reset();
    QFile::remove(QString::fromStdString(m_path));
}

void DayDraft::save() const {
    std::string text = heading;
    if (m_end)
        text += endHeading + std::to_string(m_end->entry) + " " + m_end->hash + "\n";
    for (const EntryWords& entry : m_entries)
        text += lineOf(entry) + "\n";
    writeFileSafely(m_path, text);
}

}  // namespace rackbook
