// A disk that fills up, at every point where it can.
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <filesystem>

#include "StoreBook.h"
#include "store/RecordReader.h"
#include "support/Child.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::entriesOf;
using test::messageOf;
using test::takeSound;
using test::termsOfTest;

class FaultsTest : public test::StoreBook {
protected:
    static std::vector<Record> manyMixes(const std::string& prefix, int count) {
        std::vector<Record> records;
        for (int i = 0; i < count; ++i) {
            Mix mix;
            mix.id = prefix + std::to_string(i);
            mix.name = std::string(500, 'n');
            records.push_back(mix);
        }
        return records;
    }
    std::string findings() {
        std::string text;
        for (const Finding& finding : verify(book(), decodeRecord).findings)
            text += describe(finding) + "\n";
        return text;
    }
};

TEST_F(FaultsTest, LeaveTheBookUnchangedWhereTheDiskIsFull) {
    takeSound(book(), manyMixes("before", 10));
    const std::int64_t pages = numberFrom("PRAGMA page_count");
    for (std::int64_t room = 0; room < 60; room += 4) {
        SCOPED_TRACE(room);
        database().execute("PRAGMA max_page_count = " + std::to_string(pages + room));
        EXPECT_EQ(messageOf<StoreError>(
                      [&] { take(book(), entriesOf(manyMixes("more", 400)), termsOfTest()); }),
                  path() +
                      ": database or disk is full. The disk is full; make room and try again. The "
                      "book is unchanged.");
        ASSERT_EQ(countOf(book(), RecordKind::mix), 10);
        ASSERT_EQ(numberFrom("SELECT count(*) FROM journal"), 10);
    }
    database().execute("PRAGMA max_page_count = 1000000");
    EXPECT_EQ(findings(), "");
    takeSound(book(), manyMixes("more", 400));
    EXPECT_EQ(countOf(book(), RecordKind::mix), 410);
    EXPECT_EQ(findings(), "");
}

// The system itself refuses the bytes, in the middle of the log or of the file.
TEST_F(FaultsTest, LeaveTheBookUnchangedWhereTheSystemRefusesBytes) {
    takeSound(book(), manyMixes("before", 10));
    close();
    for (const rlim_t most : {300000u, 450000u, 700000u}) {
        SCOPED_TRACE(most);
        test::Child child([&](test::Child&) {
            signal(SIGXFSZ, SIG_IGN);
            const rlimit limit{most, most};
            setrlimit(RLIMIT_FSIZE, &limit);
            return messageOf<StoreError>([&] {
                BookFile limited = BookFile::openToWrite(options());
                take(limited, entriesOf(manyMixes("more", 4000)), termsOfTest());
            });
        });
        EXPECT_EQ(child.said(),
                  path() +
                      ": disk I/O error. Check the disk and the space on it. The book is "
                      "unchanged.");
        reopen();
        EXPECT_EQ(countOf(book(), RecordKind::mix), 10);
        EXPECT_EQ(findings(), "");
        close();
    }
}

TEST_F(FaultsTest, LeaveNoHalfBookWhereOneCannotBeMade) {
    test::Child child([&](test::Child&) {
        signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{50000, 50000};
        setrlimit(RLIMIT_FSIZE, &limit);
        return messageOf<StoreError>([&] { BookFile::create(options()); });
    });
    // It may fail while the book still has the name it is made under, or just after.
    std::string said = child.said();
    const std::size_t at = said.find(".unfinished");
    if (at != std::string::npos)
        said.erase(at, std::string(".unfinished").size());
    EXPECT_EQ(said, path() +
                        ": disk I/O error. Check the disk and the space on it. The book is "
                        "unchanged.");
    EXPECT_TRUE(std::filesystem::is_empty(folder().path()));
}

}  // namespace
}  // namespace rackbook
