#include "store/JournalEnd.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "StoreBook.h"

namespace rackbook {
namespace {

using test::takeSound;

class JournalEndTest : public test::StoreBook {
protected:
    static std::vector<Record> mixNamed(const std::string& id) {
        Mix mix;
        mix.id = id;
        mix.name = id;
        return {mix};
    }
    BookFile copyOfBook(const std::string& name) {
        close();
        std::filesystem::copy_file(path(), folder().file(name));
        reopen();
        return BookFile::openToWrite({folder().file(name), test::schemaFolder(), 0});
    }
};

TEST_F(JournalEndTest, StandsForAllEntriesBefore) {
    EXPECT_EQ(journalEndOf(book()).entry, 0);
    takeSound(book(), mixNamed("a"));
    const JournalEnd first = journalEndOf(book());
    EXPECT_EQ(first.entry, 1);
    takeSound(book(), mixNamed("b"));
    EXPECT_TRUE(holds(book(), first));
    EXPECT_TRUE(holds(book(), journalEndOf(book())));
    EXPECT_FALSE(holds(book(), {first.entry, journalEndOf(book()).hash}));
    EXPECT_FALSE(holds(book(), {9, first.hash}));
}

TEST_F(JournalEndTest, FindsWhereTwoBooksPart) {
    for (const char* id : {"a", "b", "c"})
        takeSound(book(), mixNamed(id));
    BookFile other = copyOfBook("other.book");
    EXPECT_EQ(lastInCommon(book(), other).entry, 3);
    takeSound(book(), mixNamed("d"));
    EXPECT_EQ(lastInCommon(book(), other).entry, 3);
    EXPECT_EQ(lastInCommon(other, book()).entry, 3);
    // The same record at the same place is another entry: it has a salt of its own.
    takeSound(other, mixNamed("d"));
    EXPECT_EQ(lastInCommon(book(), other).entry, 3);
    const BookFile strange =
        BookFile::create({folder().file("strange.book"), test::schemaFolder(), 0});
    EXPECT_EQ(lastInCommon(book(), strange).entry, 0);
}

}  // namespace
}  // namespace rackbook
