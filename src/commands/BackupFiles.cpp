#include "commands/BackupFiles.h"

#include <algorithm>
#include <set>

#include "base/Clock.h"
#include "base/Files.h"

namespace rackbook {

namespace {

constexpr const char* ending = ".rackbook";
constexpr std::size_t stampLength = 16;
constexpr std::size_t dayLength = 8;
constexpr std::size_t monthLength = 6;

bool endsWith(const std::string& text, const std::string& end) {
    return text.size() >= end.size() &&
           text.compare(text.size() - end.size(), end.size(), end) == 0;
}

std::string stemOf(const std::string& bookPath) {
    const std::string name = fileNameOf(bookPath);
    return endsWith(name, ending) ? name.substr(0, name.size() - std::string(ending).size()) : name;
}

bool isStamp(const std::string& text) {
    static const std::string form = "00000000T000000Z";
    return text.size() == form.size() &&
           std::equal(text.begin(), text.end(), form.begin(), [](char c, char wanted) {
               return wanted == '0' ? c >= '0' && c <= '9' : c == wanted;
           });
}

// The moment in a name; empty where it is no backup of that book.
std::string stampIn(const std::string& name, const std::string& stem) {
    const std::string end = ending;
    if (name.size() != stem.size() + 1 + stampLength + end.size() ||
        name.compare(0, stem.size() + 1, stem + "-") != 0 || !endsWith(name, end))
        return {};
    const std::string stamp = name.substr(stem.size() + 1, stampLength);
    return isStamp(stamp) ? stamp : std::string();
}

// Of moments from the latest to the earliest, the first in each of `most` days or months.
void keepFirstOfEach(const std::vector<std::string>& stamps, std::size_t length, std::size_t most,
                     std::set<std::string>& kept) {
    std::set<std::string> seen;
    for (const std::string& stamp : stamps)
        if (seen.size() < most && seen.insert(stamp.substr(0, length)).second)
            kept.insert(stamp);
}

}  // namespace

std::string stampOf(std::int64_t epoch_s) {
    std::string stamp = utcText(epoch_s);
    stamp.erase(
        std::remove_if(stamp.begin(), stamp.end(), [](char c) { return c == '-' || c == ':'; }),
        stamp.end());
    return stamp;
}

std::string backupName(const std::string& bookPath, std::int64_t madeAt_s) {
    return stemOf(bookPath) + "-" + stampOf(madeAt_s) + ending;
}

std::vector<std::string> superseded(const std::string& bookPath,
                                    const std::vector<std::string>& names, const Keeping& keeping) {
    const std::string stem = stemOf(bookPath);
    std::vector<std::string> stamps;
    for (const std::string& name : names)
        if (const std::string stamp = stampIn(name, stem); !stamp.empty())
            stamps.push_back(stamp);
    std::sort(stamps.rbegin(), stamps.rend());
    std::set<std::string> kept;
    if (!stamps.empty())
        kept.insert(stamps.front());
    keepFirstOfEach(stamps, dayLength, keeping.days, kept);
    keepFirstOfEach(stamps, monthLength, keeping.months, kept);
    std::vector<std::string> others;
    for (const std::string& stamp : stamps)
        if (kept.count(stamp) == 0)
            others.push_back(stem + "-" + stamp + ending);
    std::sort(others.begin(), others.end());
    return others;
}

}  // namespace rackbook
