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
}

void DayDraft::add(EntryWords entry) {
    m_entries.push_back(std::move(entry));
    save();
}

void DayDraft::removeLast() {
    m_entries.pop_back();
    if (m_entries.empty())
        clear();
    else
        save();
}

void DayDraft::clear() {
    m_entries.clear();
    QFile::remove(QString::fromStdString(m_path));
}

void DayDraft::save() const {
    std::string text = heading;
    for (const EntryWords& entry : m_entries)
        text += lineOf(entry) + "\n";
    writeFileSafely(m_path, text);
}

}  // namespace rackbook
