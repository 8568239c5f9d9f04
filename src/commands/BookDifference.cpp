#include "commands/BookDifference.h"

#include <algorithm>
#include <unordered_map>

#include "base/Error.h"
#include "base/Sha256.h"
#include "exchange/RecordCodec.h"
#include "records/Forgetting.h"
#include "store/JournalCopy.h"

namespace rackbook {

namespace {

constexpr std::size_t step = 1000;

// What a book said of a record, from the first to the last. A version is a hash of the record;
// of what was struck out, and of what was forgotten, a word.
struct Course {
    std::vector<std::string> versions;
    std::int64_t lastEntry = 0;
    bool isForgotten = false;  // one of them had to be forgotten, or is what was left

    bool said(const std::string& version) const {
        return std::find(versions.begin(), versions.end(), version) != versions.end();
    }
    const std::string& last() const { return versions.back(); }
};

const std::string struckOut = "struck out";
const std::string wasForgotten = "forgotten";

// Equal records give equal versions, whichever program wrote them down.
std::string versionOf(const JournalRow& row, Course& course) {
    course.isForgotten = course.isForgotten || !row.payload;
    if (row.action == "strike")
        return struckOut;
    if (!row.payload)
        return wasForgotten;
    try {
        const Record record = decodeRecord(*row.payload);
        course.isForgotten = course.isForgotten || isNeutral(record);
        return sha256Bytes(encodeRecord(record));
    } catch (const InputError&) {
        return sha256Bytes(*row.payload);
    }
}

struct Courses {
    std::unordered_map<std::string, Course> byName;
    std::vector<std::string> names;  // in the order of their first entries
};

Courses coursesIn(const BookFile& book, const std::function<void(std::size_t)>& onEntries) {
    Courses courses;
    std::size_t count = 0;
    eachJournalRow(book, [&](const JournalRow& row) {
        const std::string name = row.kind + " " + row.id;
        Course& course = courses.byName[name];
        if (course.versions.empty())
            courses.names.push_back(name);
        course.versions.push_back(versionOf(row, course));
        course.lastEntry = row.entry;
        if (++count % step == 0 && onEntries)
            onEntries(step);
    });
    return courses;
}

class Comparing {
public:
    Comparing(const BookFile& here, const BookFile& there,
              const std::function<void(std::size_t)>& onEntries)
        : m_here(here),
          m_there(there),
          m_ours(coursesIn(here, onEntries)),
          m_theirs(coursesIn(there, onEntries)) {}

    BookDifference run() {
        for (const std::string& name : m_theirs.names) {
            const auto ours = m_ours.byName.find(name);
            const Course& theirs = m_theirs.byName.at(name);
            if (ours == m_ours.byName.end())
                takeNew(theirs);
            else
                compare(name, ours->second, theirs);
        }
        return std::move(m_result);
    }

private:
    void takeNew(const Course& theirs) {
        if (theirs.last() == struckOut)
            ++m_result.onlyStruckThere;
        else if (theirs.last() == wasForgotten)
            ++m_result.forgotten;
        else
            take(theirs);
    }

    void compare(const std::string& name, const Course& ours, const Course& theirs) {
        const bool theyFollow = theirs.said(ours.last());
        const bool weFollow = ours.said(theirs.last());
        if (ours.last() == theirs.last())
            ++m_result.alike;
        else if (theirs.isForgotten && !ours.isForgotten)
            m_result.forgottenThere.push_back(name);
        else if (ours.isForgotten && !theirs.isForgotten)
            ++m_result.forgotten;
        else if (ours.last() == wasForgotten || theirs.last() == wasForgotten)
            ++m_result.forgotten;
        else if (theyFollow && !weFollow)
            take(theirs);
        else if (weFollow && !theyFollow)
            ++m_result.aheadHere;
        else
            m_result.divergences.push_back({entryIn(m_here, ours), entryIn(m_there, theirs)});
    }

    static JournalEntry entryIn(const BookFile& book, const Course& course) {
        return journalEntry(book, course.lastEntry).value();
    }

    void take(const Course& theirs) { m_result.toTake.push_back(entryIn(m_there, theirs)); }

    const BookFile& m_here;
    const BookFile& m_there;
    Courses m_ours;
    Courses m_theirs;
    BookDifference m_result;
};

}  // namespace

BookDifference differenceOf(const BookFile& here, const BookFile& there,
                            const std::function<void(std::size_t)>& onEntries) {
    return Comparing(here, there, onEntries).run();
}

}  // namespace rackbook
