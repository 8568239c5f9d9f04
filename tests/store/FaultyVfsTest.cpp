// Every call that SQLite makes to the system fails once: the book is as before or as after, never
// between, and goes on.
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <filesystem>

#include "FaultyVfs.h"
#include "StoreBook.h"
#include "base/Error.h"
#include "store/Migration.h"
#include "store/NewBook.h"
#include "store/RecordReader.h"
#include "store/Restoring.h"

namespace rackbook {
namespace {

using test::entriesOf;
using test::FaultyVfs;
using test::takeSound;
using test::termsOfTest;
using test::VfsCall;

struct Way {
    const char* name;
    VfsCall call;
    int code;
    bool lasting;
    bool tears;
};

const Way ways[] = {
    {"open fails", VfsCall::open, SQLITE_CANTOPEN, false, false},
    {"write fails", VfsCall::write, SQLITE_IOERR_WRITE, false, false},
    {"write is torn", VfsCall::write, SQLITE_IOERR_WRITE, true, true},
    {"disk is full", VfsCall::write, SQLITE_FULL, true, false},
    {"sync fails", VfsCall::sync, SQLITE_IOERR_FSYNC, false, false},
    {"disk no longer syncs", VfsCall::sync, SQLITE_IOERR_FSYNC, true, false},
    {"truncate fails", VfsCall::truncate, SQLITE_IOERR_TRUNCATE, false, false},
    {"remove fails", VfsCall::remove, SQLITE_IOERR_DELETE, false, false},
};

std::vector<Record> mixes(const std::string& prefix, int count) {
    std::vector<Record> records;
    for (int i = 0; i < count; ++i) {
        Mix mix;
        mix.id = prefix + std::to_string(i);
        mix.name = std::string(700, 'n');
        records.push_back(mix);
    }
    return records;
}

class FaultyVfsTest : public test::StoreBook {
protected:
    // For every way and every call that it may hit: `prepare`, then `work` with the fault, then
    // `judge` with whether work went well. Counts the faults that came.
    template <class Prepare, class Work, class Judge>
    int hitEveryCall(const Prepare& prepare, const Work& work, const Judge& judge) {
        int faults = 0;
        FaultyVfs vfs;
        for (const Way& way : ways) {
            // Of many writes in a row not every one is hit.
            for (int nth = 1; nth < 1000; nth += nth < 25 ? 1 : 11) {
                SCOPED_TRACE(std::string(way.name) + " at " + std::to_string(nth));
                prepare();
                vfs.arm(way.call, nth, way.code, way.lasting, way.tears);
                bool isDone = true;
                try {
                    work();
                } catch (const StoreError&) {
                    isDone = false;
                }
                vfs.disarm();
                judge(isDone);
                if (!vfs.hasFailed())
                    break;
                ++faults;
            }
        }
        return faults;
    }

    // A book as an earlier version left it.
    std::string earlierBook() {
        const std::string made = folder().file("earlier.book");
        Database database(made, OpenMode::create, 0);
        migrate(database, test::schemaFolder(), 1);
        database.execute(test::bytesOf(test::sourcePath("tests/store/books/version-1.sql")));
        return made;
    }

    std::string findingsIn(const BookFile& one) {
        std::string text;
        for (const Finding& finding : verify(one, decodeRecord).findings)
            text += describe(finding) + "\n";
        return text;
    }
};

TEST_F(FaultyVfsTest, AnIntakeIsTakenOrNot) {
    takeSound(book(), mixes("before", 5));
    close();
    const std::string image = test::bytesOf(path());
    const auto prepare = [&] {
        std::filesystem::remove(path() + "-wal");
        std::filesystem::remove(path() + "-shm");
        test::putFile(path(), image);
    };
    const auto work = [&] {
        BookFile opened = BookFile::openToWrite(options());
        take(opened, entriesOf(mixes("more", 30)), termsOfTest());
    };
    const int faults = hitEveryCall(prepare, work, [&](bool isDone) {
        BookFile opened = BookFile::openToWrite(options());
        const std::size_t count = countOf(opened, RecordKind::mix);
        EXPECT_TRUE(count == 35 || (count == 5 && !isDone)) << count;
        EXPECT_EQ(findingsIn(opened), "");
        take(opened, entriesOf(mixes("more", 30)), termsOfTest());
        EXPECT_EQ(countOf(opened, RecordKind::mix), 35u);
    });
    EXPECT_GT(faults, 20);
}

TEST_F(FaultyVfsTest, ABookIsBroughtUpOrStaysAsItWas) {
    const std::string earlier = test::bytesOf(earlierBook());
    const auto prepare = [&] {
        std::filesystem::remove(path() + "-wal");
        std::filesystem::remove(path() + "-shm");
        test::putFile(path(), earlier);
    };
    const int faults = hitEveryCall(
        prepare, [&] { BookFile::openToWrite(options()); },
        [&](bool) {
            const BookFile opened = BookFile::openToWrite(options());
            EXPECT_EQ(findingsIn(opened), "");
        });
    EXPECT_GT(faults, 20);
}

TEST_F(FaultyVfsTest, ABookIsMadeAsAWholeOrNotAtAll) {
    takeSound(book(), mixes("before", 5));
    BookOptions copied = options();
    copied.path = folder().file("copy.book");
    const auto prepare = [&] { std::filesystem::remove(copied.path); };
    const auto work = [&] {
        NewBook made(copied, book());
        made.settle();
        made.finish();
    };
    const int faults = hitEveryCall(prepare, work, [&](bool isDone) {
        EXPECT_EQ(std::filesystem::exists(copied.path), isDone);
        EXPECT_FALSE(std::filesystem::exists(copied.path + ".unfinished"));
        if (isDone) {
            EXPECT_EQ(findingsIn(BookFile::openToRead(copied)), "");
        }
    });
    EXPECT_GT(faults, 20);
}

TEST_F(FaultyVfsTest, ABookBecomesAnotherOrStaysAsItWas) {
    takeSound(book(), mixes("before", 5));
    close();
    const std::string image = test::bytesOf(path());
    BookOptions others = options();
    others.path = folder().file("other.book");
    BookFile other = BookFile::create(others);
    takeSound(other, mixes("other", 60));
    const auto prepare = [&] {
        std::filesystem::remove(path() + "-wal");
        std::filesystem::remove(path() + "-shm");
        test::putFile(path(), image);
    };
    const auto work = [&] {
        BookFile opened = BookFile::openToWrite(options());
        becomeEqual(opened, other);
    };
    const int faults = hitEveryCall(prepare, work, [&](bool isDone) {
        const BookFile opened = BookFile::openToWrite(options());
        const std::size_t count = countOf(opened, RecordKind::mix);
        EXPECT_TRUE(count == 60 || (count == 5 && !isDone)) << count;
        EXPECT_EQ(findingsIn(opened), "");
    });
    EXPECT_GT(faults, 20);
}

}  // namespace
}  // namespace rackbook
