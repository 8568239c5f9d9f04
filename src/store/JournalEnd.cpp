#include "store/JournalEnd.h"

#include <algorithm>

#include "base/Sha256.h"
#include "store/BookInner.h"

namespace rackbook {

namespace {

// The hash of that entry; empty where it is not there.
std::string hashOf(const BookFile& book, std::int64_t entry) {
    Statement lookup = book.inner().database->prepare("SELECT hash FROM journal WHERE entry = ?");
    lookup.bind(1, entry);
    return lookup.step() ? hexOf(lookup.text(0)) : std::string();
}

}  // namespace

JournalEnd journalEndOf(const BookFile& book) {
    JournalEnd end;
    end.entry = book.inner().database->wholeOf("SELECT coalesce(max(entry), 0) FROM journal");
    end.hash = hashOf(book, end.entry);
    return end;
}

bool holds(const BookFile& book, const JournalEnd& end) {
    return end.entry == 0 || (!end.hash.empty() && hashOf(book, end.entry) == end.hash);
}

JournalEnd lastInCommon(const BookFile& one, const BookFile& other) {
    // Where two entries of a number are equal, all before them are: the hashes are chained.
    std::int64_t common = 0;
    std::int64_t beyond = std::min(journalEndOf(one).entry, journalEndOf(other).entry) + 1;
    while (common + 1 < beyond) {
        const std::int64_t middle = common + (beyond - common) / 2;
        (holds(other, {middle, hashOf(one, middle)}) ? common : beyond) = middle;
    }
    return {common, hashOf(one, common)};
}

}  // namespace rackbook
