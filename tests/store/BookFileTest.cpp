#include "store/BookFile.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QLockFile>
#include <chrono>
#include <filesystem>
#include <thread>

#include "StoreBook.h"
#include "store/RecordReader.h"
#include "support/Child.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::bytesOf;
using test::Child;
using test::messageOf;
using test::putFile;
using test::takeSound;

class BookFileTest : public test::StoreBook {
protected:
    std::string openToRead() {
        return messageOf<StoreError>([&] { BookFile::openToRead(options()); });
    }
    std::string openToWrite() {
        return messageOf<StoreError>([&] { BookFile::openToWrite(options()); });
    }
    // Both ways of opening refuse with these words, and leave everything as it is.
    void expectRefused(const std::string& words) {
        const std::string before = std::filesystem::is_regular_file(path()) ? bytesOf(path()) : "";
        EXPECT_EQ(openToRead(), path() + ": " + words);
        EXPECT_EQ(openToWrite(), path() + ": " + words);
        EXPECT_EQ(std::filesystem::is_regular_file(path()) ? bytesOf(path()) : "", before);
        for (const auto& entry : std::filesystem::directory_iterator(folder().path()))
            EXPECT_EQ(entry.path().string(), path());
    }
};

TEST_F(BookFileTest, IsOneFileWhenItIsClosed) {
    takeSound(book(), test::namedRecords());
    EXPECT_EQ(book().path(), path());
    close();
    for (const auto& entry : std::filesystem::directory_iterator(folder().path()))
        EXPECT_EQ(entry.path().string(), path());
    EXPECT_EQ(bytesOf(path()).substr(0, 15), "SQLite format 3");
}

TEST_F(BookFileTest, SaysWhatItIsInItsHead) {
    EXPECT_EQ(numberFrom("PRAGMA application_id"), 0x5261636b);
    EXPECT_EQ(numberFrom("PRAGMA user_version"), bookVersion);
    EXPECT_EQ(numberFrom("SELECT count(*) FROM journal"), 0);
}

TEST_F(BookFileTest, IsNotMadeOverAnotherFile) {
    putFile(path(), "a letter");
    EXPECT_EQ(
        messageOf<StoreError>([&] { BookFile::create(options()); }),
        path() + ": something of that name is there already. Choose another name with --book.");
    EXPECT_EQ(bytesOf(path()), "a letter");
}

// A writer that was ended before it could write its name into the lock.
TEST_F(BookFileTest, TakesOverALockOfNobody) {
    book();
    close();
    putFile(path() + ".lock", "");
    EXPECT_NE(openToWrite().find("it is being written by another program"), std::string::npos)
        << "a lock that is made just now may be about to get its name";
    using std::filesystem::file_time_type;
    std::filesystem::last_write_time(path() + ".lock",
                                     file_time_type::clock::now() - std::chrono::seconds(10));
    EXPECT_EQ(openToWrite(), "(nothing was thrown)");
    EXPECT_FALSE(std::filesystem::exists(path() + ".lock"));
}

// The other file comes while this process waits for the lock.
TEST_F(BookFileTest, IsNotMadeOverAFileThatAppearsMeanwhile) {
    QLockFile lock(QString::fromStdString(path() + ".lock"));
    lock.setStaleLockTime(0);
    ASSERT_TRUE(lock.lock());
    std::string message;
    std::thread maker(
        [&] { message = messageOf<StoreError>([&] { BookFile::create(options(20)); }); });
    std::this_thread::sleep_for(std::chrono::milliseconds(300));
    putFile(path(), "");
    lock.unlock();
    maker.join();
    EXPECT_EQ(
        message,
        path() + ": something of that name is there already. Choose another name with --book.");
    EXPECT_TRUE(std::filesystem::exists(path()));
}

TEST_F(BookFileTest, LeavesNothingBehindWhereItCannotBeMade) {
    const BookOptions noSchema{path(), folder().file("none"), 0};
    EXPECT_EQ(messageOf<InputError>([&] { BookFile::create(noSchema); }),
              folder().file("none/sql/0001.sql") +
                  ": it cannot be read: No such file or directory. Check the name and the "
                  "permissions.");
    EXPECT_TRUE(std::filesystem::is_empty(folder().path()));
    const BookOptions noFolder{folder().file("none/book"), test::schemaFolder(), 0};
    EXPECT_EQ(messageOf<StoreError>([&] { BookFile::create(noFolder); }),
              noFolder.path +
                  ": its folder cannot be written. Check the permissions of the folder and the "
                  "space on the disk.");
}

TEST_F(BookFileTest, RefusesAMissingFile) {
    expectRefused("there is no book here. Make one with rackbook begin, or name one with --book.");
}

TEST_F(BookFileTest, RefusesAFolder) {
    std::filesystem::create_directory(path());
    expectRefused("it is a folder. Name the book's file with --book.");
}

TEST_F(BookFileTest, RefusesAnEmptyFile) {
    putFile(path(), "");
    expectRefused("it is not a book. Name a book made by rackbook begin; nothing was changed.");
}

TEST_F(BookFileTest, RefusesAFileOfAnotherKind) {
    putFile(path(), std::string(5000, 'x'));
    expectRefused("file is not a database. Name a book made by rackbook begin.");
}

TEST_F(BookFileTest, RefusesADatabaseOfAnotherProgram) {
    Database(path(), OpenMode::create, 0).execute("CREATE TABLE t (a)");
    expectRefused("it is not a book. Name a book made by rackbook begin; nothing was changed.");
    Database(path(), OpenMode::write, 0).execute("PRAGMA application_id = 7");
    expectRefused("it is not a book. Name a book made by rackbook begin; nothing was changed.");
}

TEST_F(BookFileTest, RefusesABookOfANewerVersion) {
    book();
    tamper("PRAGMA journal_mode = DELETE; PRAGMA user_version = 6");
    expectRefused(
        "it was written by a newer Rackbook (version 6 of the tables; this program knows 5). Use "
        "the newer program; nothing was changed.");
}

TEST_F(BookFileTest, KeepsTheSafeguardsOfSqliteOn) {
    book();
    for (const bool writes : {true, false}) {
        SCOPED_TRACE(writes);
        close();
        const BookFile opened =
            writes ? BookFile::openToWrite(options()) : BookFile::openToRead(options());
        const Database& database = *opened.inner().database;
        EXPECT_EQ(database.textOf("PRAGMA journal_mode"), "wal");
        EXPECT_EQ(database.wholeOf("PRAGMA synchronous"), 2);
        EXPECT_EQ(database.wholeOf("PRAGMA foreign_keys"), 1);
        EXPECT_EQ(database.wholeOf("PRAGMA trusted_schema"), 0);
    }
    reopen();
    EXPECT_EQ(numberFrom("PRAGMA synchronous"), 2);
}

TEST_F(BookFileTest, CannotBeWrittenByAReader) {
    book();
    close();
    const BookFile reader = BookFile::openToRead(options());
    EXPECT_EQ(
        messageOf<StoreError>([&] { reader.inner().database->execute("DELETE FROM journal"); }),
        path() +
            ": attempt to write a readonly database. Check the name, the permissions of the "
            "file and of its folder.");
}

TEST_F(BookFileTest, LetsOneProcessWriteAtATime) {
    book();
    close();
    Child holder([&](Child& child) {
        const BookFile held = BookFile::openToWrite(options());
        child.say("held");
        child.waitForParent();
        return std::string("done");
    });
    ASSERT_EQ(holder.said(), "held");
    const auto start = std::chrono::steady_clock::now();
    const std::string message = messageOf<StoreError>([&] { BookFile::openToWrite(options(1)); });
    const std::chrono::duration<double> waited_s = std::chrono::steady_clock::now() - start;
    char host[256] = {};
    ASSERT_EQ(gethostname(host, sizeof host - 1), 0);
    EXPECT_EQ(message, path() + ": it is being written by process " +
                           std::to_string(holder.process()) + " (storeTests) on " + host +
                           ", for longer than 1 s. Wait for it to finish, or give a longer "
                           "--wait. Where you are sure that it runs no more, remove " +
                           path() + ".lock.");
    EXPECT_GE(waited_s.count(), 0.9);
    EXPECT_LE(waited_s.count(), 5);
    EXPECT_EQ(countOf(BookFile::openToRead(options()), RecordKind::mix), 0);
    holder.letGo();
    EXPECT_EQ(holder.said(), "done");
    BookFile::openToWrite(options(5));
}

TEST_F(BookFileTest, IsReadWhileAnotherProcessWrites) {
    takeSound(book(), test::namedRecords());
    close();
    Child writer([&](Child& child) {
        BookFile held = BookFile::openToWrite(options());
        held.inner().database->execute(
            "BEGIN IMMEDIATE; DELETE FROM look_impressions; "
            "DELETE FROM look");
        child.say("half way");
        child.waitForParent();
        held.inner().database->execute("COMMIT");
        child.say("done");
        child.waitForParent();
        return std::string();
    });
    ASSERT_EQ(writer.said(), "half way");
    const BookFile reader = BookFile::openToRead(options());
    EXPECT_EQ(countOf(reader, RecordKind::look), 2);
    writer.letGo();
    ASSERT_EQ(writer.said(), "done");
    // What is read through one handle belongs to one state.
    EXPECT_EQ(countOf(reader, RecordKind::look), 2);
    EXPECT_EQ(countOf(BookFile::openToRead(options()), RecordKind::look), 0);
    writer.letGo();
}

TEST_F(BookFileTest, IsTheSameBookUnderEveryNameThatLeadsToIt) {
    book();
    const std::string link = folder().file("link.book");
    std::filesystem::create_symlink(path(), link);
    const std::string message = messageOf<StoreError>([&] {
        BookFile::openToWrite({link, test::schemaFolder(), 0});
    });
    EXPECT_EQ(message.substr(0, message.find(" by ")), link + ": it is being written");
    close();
    BookFile::openToWrite({link, test::schemaFolder(), 0});
}

TEST_F(BookFileTest, IsFreeAgainAfterItsWriterWasKilled) {
    takeSound(book(), test::namedRecords());
    close();
    Child writer([&](Child& child) {
        BookFile held = BookFile::openToWrite(options());
        held.inner().database->execute(
            "BEGIN IMMEDIATE; DELETE FROM look_impressions; "
            "DELETE FROM look");
        child.say("half way");
        child.waitForParent();
        return std::string();
    });
    ASSERT_EQ(writer.said(), "half way");
    writer.kill(SIGKILL);
    EXPECT_TRUE(std::filesystem::exists(path() + ".lock"));
    reopen();
    EXPECT_EQ(numberFrom("SELECT count(*) FROM look"), 2);
    EXPECT_EQ(textFrom("PRAGMA integrity_check"), "ok");
}

TEST_F(BookFileTest, IsReadFromAFolderThatCannotBeWritten) {
    takeSound(book(), test::namedRecords());
    close();
    ASSERT_EQ(chmod(path().c_str(), 0444), 0);
    ASSERT_EQ(chmod(folder().path().c_str(), 0555), 0);
    Child child([&](Child&) {
        test::giveUpRoot();
        const std::string refused =
            messageOf<StoreError>([&] { BookFile::openToWrite(options()); });
        return std::to_string(countOf(BookFile::openToRead(options()), RecordKind::look)) + " " +
               refused;
    });
    EXPECT_EQ(child.said(), "2 " + path() +
                                ": its folder cannot be written. Check the permissions of the "
                                "folder and the space on the disk.");
    ASSERT_EQ(chmod(folder().path().c_str(), 0755), 0);
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder().path()), {}), 1);
}

TEST_F(BookFileTest, IsNotWrittenWhereTheFileItselfCannotBe) {
    book();
    close();
    ASSERT_EQ(chmod(path().c_str(), 0444), 0);
    ASSERT_EQ(chmod(folder().path().c_str(), 0777), 0);
    Child child([&](Child&) {
        test::giveUpRoot();
        return messageOf<StoreError>([&] { BookFile::openToWrite(options()); });
    });
    EXPECT_EQ(child.said(), path() +
                                ": the file cannot be written. Check its permissions and those of "
                                "its folder.");
}

TEST_F(BookFileTest, HasItsNameInWhateverLetters) {
    const BookOptions odd{folder().file("grå 100%? #1.book"), test::schemaFolder(), 0};
    {
        BookFile made = BookFile::create(odd);
        takeSound(made, test::namedRecords());
    }
    EXPECT_EQ(countOf(BookFile::openToRead(odd), RecordKind::mix), 2);
    ASSERT_EQ(chmod(odd.path.c_str(), 0444), 0);
    ASSERT_EQ(chmod(folder().path().c_str(), 0555), 0);
    Child child([&](Child&) {
        test::giveUpRoot();
        return std::to_string(countOf(BookFile::openToRead(odd), RecordKind::mix));
    });
    EXPECT_EQ(child.said(), "2");
    ASSERT_EQ(chmod(folder().path().c_str(), 0755), 0);
}

}  // namespace
}  // namespace rackbook
