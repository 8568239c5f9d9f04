#include "base/Files.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <cstdio>
#include <filesystem>

#include "support/Child.h"
#include "support/MessageOf.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using test::bytesOf;
using test::Child;
using test::messageOf;
using test::putFile;
using test::TempFolder;

std::size_t filesIn(const std::string& folder) {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        static_cast<void>(entry);
        ++count;
    }
    return count;
}

TEST(Files, ReadsAllBytes) {
    const TempFolder folder;
    const std::string bytes = std::string("a\0b\r\n\xFF", 6) + std::string(3 << 20, 'x');
    putFile(folder.file("f"), bytes);
    EXPECT_EQ(readFile(folder.file("f"), bytes.size()), bytes);
    putFile(folder.file("empty"), "");
    EXPECT_EQ(readFile(folder.file("empty"), 0), "");
}

TEST(Files, RefusesFilesBeyondTheLimit) {
    const TempFolder folder;
    const std::string path = folder.file("f");
    putFile(path, std::string((2 << 20) + 1, 'x'));
    EXPECT_EQ(messageOf<InputError>([&] { readFile(path, 2 << 20); }),
              path + ": it is larger than 2 MiB. Split it into smaller files.");
    EXPECT_EQ(messageOf<InputError>([&] { readFile(path, 100); }),
              path + ": it is larger than 100 bytes. Split it into smaller files.");
}

TEST(Files, NamesWhatCannotBeRead) {
    const TempFolder folder;
    EXPECT_EQ(messageOf<InputError>([&] { readFile(folder.path(), 10); }),
              folder.path() + ": it is a folder. Name a file.");
    const std::string missing = folder.file("missing");
    EXPECT_EQ(messageOf<InputError>([&] { readFile(missing, 10); }),
              missing +
                  ": it cannot be read: No such file or directory. Check the name and the "
                  "permissions.");
}

TEST(Files, NamesFilesThatMayNotBeRead) {
    const TempFolder folder;
    const std::string path = folder.file("secret");
    putFile(path, "x");
    ASSERT_EQ(chmod(folder.path().c_str(), 0755), 0);
    ASSERT_EQ(chmod(path.c_str(), 0), 0);
    Child child([&](Child&) {
        test::giveUpRoot();
        return messageOf<InputError>([&] { readFile(path, 10); });
    });
    EXPECT_EQ(child.said(), path +
                                ": it cannot be read: Permission denied. Check the name and the "
                                "permissions.");
}

TEST(Files, ReadsStandardInputWithTheSameLimit) {
    const TempFolder folder;
    const std::string bytes = std::string("a\0b", 3) + std::string(2 << 20, 'x');
    putFile(folder.file("in"), bytes);
    const auto readWith = [&](std::size_t most) {
        Child child([&](Child&) -> std::string {
            if (std::freopen(folder.file("in").c_str(), "r", stdin) == nullptr)
                return "standard input cannot be set";
            std::string read;
            const std::string refusal =
                messageOf<InputError>([&] { read = readStandardInput(most); });
            return read == bytes ? "all of it" : refusal;
        });
        return child.said();
    };
    EXPECT_EQ(readWith(bytes.size()), "all of it");
    EXPECT_EQ(readWith(2 << 20),
              "standard input: it is larger than 2 MiB. Split it into smaller files.");
}

TEST(Files, WritesAndReplacesWithoutLeftovers) {
    const TempFolder folder;
    const std::string path = folder.file("sheet.pdf");
    writeFileSafely(path, "one");
    EXPECT_EQ(bytesOf(path), "one");
    writeFileSafely(path, std::string("t\0wo", 4));
    EXPECT_EQ(bytesOf(path), std::string("t\0wo", 4));
    EXPECT_EQ(filesIn(folder.path()), 1u);
}

// The limit on the size of files stands for a full disk: the write fails half way.
TEST(Files, LeaveTheOldFileWhereWritingFails) {
    const TempFolder folder;
    const std::string path = folder.file("sheet.pdf");
    putFile(path, "old");
    Child child([&](Child&) {
        signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{100000, 100000};
        setrlimit(RLIMIT_FSIZE, &limit);
        return messageOf<StoreError>([&] { writeFileSafely(path, std::string(1000000, 'x')); });
    });
    EXPECT_EQ(child.said(),
              path +
                  ": it cannot be written: File too large. Check the folder, its permissions and "
                  "the space on the disk.");
    EXPECT_EQ(bytesOf(path), "old");
    EXPECT_EQ(filesIn(folder.path()), 1u);
}

TEST(Files, SaysWhereNothingCanBeWritten) {
    const TempFolder folder;
    const std::string path = folder.file("no/such/folder.pdf");
    EXPECT_EQ(messageOf<StoreError>([&] { writeFileSafely(path, "x"); }),
              path +
                  ": it cannot be written: No such file or directory. Check the folder, its "
                  "permissions and the space on the disk.");
    putFile(folder.file("file"), "x");
    EXPECT_EQ(messageOf<StoreError>([&] { makeFolder(folder.file("file/below")); }),
              folder.file("file/below") +
                  ": the folder cannot be made. Check the name, the permissions and the space on "
                  "the disk.");
}

TEST(Files, MakesFoldersWithTheirParents) {
    const TempFolder folder;
    makeFolder(folder.file("a/b/c"));
    makeFolder(folder.file("a/b/c"));
    EXPECT_TRUE(isFolder(folder.file("a/b/c")));
    EXPECT_TRUE(fileExists(folder.file("a/b/c")));
    EXPECT_FALSE(isFolder(folder.file("a/x")));
    EXPECT_FALSE(fileExists(folder.file("a/x")));
}

TEST(Files, ListsFilesBelowInOneOrder) {
    const TempFolder folder;
    makeFolder(folder.file("b"));
    for (const char* name : {"z.json", "b/a.json", "a.JSON", "a.txt", "b/note.json.bak"})
        putFile(folder.file(name), "");
    const std::vector<std::string> wanted = {folder.file("a.JSON"), folder.file("b/a.json"),
                                             folder.file("z.json")};
    EXPECT_EQ(filesBelow(folder.path(), ".json").paths, wanted);
    EXPECT_TRUE(filesBelow(folder.path(), ".json").passedOver.empty());
}

TEST(Files, SayWhatTheyPassOverInAFolder) {
    const TempFolder folder;
    makeFolder(folder.file("b"));
    makeFolder(folder.file(".hidden"));
    for (const char* name : {"a.json", ".b.json", ".profile"})
        putFile(folder.file(name), "");
    std::filesystem::create_directory_symlink(folder.path(), folder.file("b/round"));
    std::filesystem::create_symlink("a.json", folder.file("link.json"));
    std::filesystem::create_symlink("missing", folder.file("lost.json"));
    ASSERT_EQ(mkfifo(folder.file("pipe.json").c_str(), 0600), 0);
    // No text in UTF-8.
    putFile(folder.file("\xFF.json"), "");
    const std::vector<std::string> wanted = {folder.file(".b.json"),      folder.file(".hidden"),
                                             folder.file("\\uFFFD.json"), folder.file("b/round"),
                                             folder.file("link.json"),    folder.file("lost.json"),
                                             folder.file("pipe.json")};
    const FilesBelow found = filesBelow(folder.path(), ".json");
    EXPECT_EQ(found.passedOver, wanted);
    EXPECT_EQ(found.paths, std::vector<std::string>{folder.file("a.json")});
}

TEST(Files, RefuseAFolderThatIsNotThere) {
    const TempFolder folder;
    EXPECT_EQ(messageOf<InputError>([&] { filesBelow(folder.file("missing"), ".json"); }),
              folder.file("missing") + ": the folder cannot be read. Check its permissions.");
}

TEST(Files, KnowAnEmptyFolder) {
    const TempFolder folder;
    EXPECT_TRUE(isEmptyFolder(folder.path()));
    putFile(folder.file(".hidden"), "");
    EXPECT_FALSE(isEmptyFolder(folder.path()));
    EXPECT_FALSE(isEmptyFolder(folder.file(".hidden")));
}

TEST(NewFolder, ComesIntoBeingAsAWholeOrNotAtAll) {
    const TempFolder folder;
    const std::string path = folder.file("out");
    {
        NewFolder given(path);
        putFile(pathOf(given.path(), "a"), "1");
        EXPECT_FALSE(fileExists(path));
    }
    EXPECT_TRUE(isEmptyFolder(folder.path()));
    makeFolder(path);
    NewFolder made(path + "/");
    putFile(pathOf(made.path(), "a"), "1");
    made.finish();
    EXPECT_EQ(bytesOf(pathOf(path, "a")), "1");
    EXPECT_FALSE(fileExists(made.path()));
}

TEST(NewFolder, LeavesWhatStandsInItsWay) {
    const TempFolder folder;
    putFile(folder.file("out.rackbook-unfinished"), "mine");
    EXPECT_EQ(
        messageOf<StoreError>([&] { NewFolder given(folder.file("out")); }),
        folder.file("out.rackbook-unfinished") +
            ": something of that name is there already. Another command may be writing it; remove "
            "it if none is.");
    EXPECT_EQ(bytesOf(folder.file("out.rackbook-unfinished")), "mine");
    makeFolder(folder.file("full"));
    putFile(folder.file("full/kept"), "mine");
    NewFolder made(folder.file("full"));
    EXPECT_EQ(messageOf<StoreError>([&] { made.finish(); }),
              folder.file("full") +
                  ": the folder cannot be given its name. Check the permissions of the folder "
                  "around it.");
    EXPECT_EQ(bytesOf(folder.file("full/kept")), "mine");
}

TEST(NewFolder, TakesAwayWhatAnEndedProcessLeft) {
    const TempFolder folder;
    const std::string path = folder.file("out");
    Child writer([&](Child& child) {
        NewFolder made(path);
        putFile(pathOf(made.path(), "half"), "1");
        child.say("written");
        child.waitForParent();
        return std::string();
    });
    ASSERT_EQ(writer.said(), "written");
    EXPECT_EQ(
        messageOf<StoreError>([&] { NewFolder given(path); }),
        path +
            ".rackbook-unfinished: something of that name is there already. Another command may be "
            "writing it; remove it if none is.");
    EXPECT_TRUE(fileExists(path + ".rackbook-unfinished/half"));
    writer.kill(SIGTERM);
    EXPECT_TRUE(fileExists(path + ".rackbook-unfinished/half"));
    NewFolder made(path);
    EXPECT_FALSE(fileExists(pathOf(made.path(), "half")));
    made.finish();
    EXPECT_TRUE(isEmptyFolder(path));
}

TEST(Files, KnowWhatIsNoFile) {
    const TempFolder folder;
    const std::string pipe = folder.file("pipe");
    ASSERT_EQ(mkfifo(pipe.c_str(), 0600), 0);
    for (const std::string& path : {pipe, std::string("/dev/zero")})
        EXPECT_EQ(messageOf<InputError>([&] { requireRegularFile(path); }),
                  path + ": it is no file. Name a file.");
    EXPECT_EQ(messageOf<InputError>([&] { requireRegularFile(folder.path()); }),
              folder.path() + ": it is a folder. Name a file.");
    requireRegularFile(folder.file("not there"));  // whoever reads it says so
}

TEST(Files, TakesPathsApartAndTogether) {
    EXPECT_EQ(pathOf("a", "b"), "a/b");
    EXPECT_EQ(pathOf("a/", "b"), "a/b");
    EXPECT_EQ(pathOf("a", "/b"), "/b");
    EXPECT_EQ(fileNameOf("a/b.json"), "b.json");
    EXPECT_EQ(folderOf("a/b.json"), "a");
    EXPECT_EQ(folderOf("b.json"), ".");
}

TEST(Files, KeepNamesOutsideAscii) {
    const TempFolder folder;
    const std::string path = folder.file("grå 灰.json");
    writeFileSafely(path, "x");
    EXPECT_EQ(bytesOf(path), "x");
    EXPECT_EQ(filesBelow(folder.path(), ".json").paths, std::vector<std::string>{path});
}

}  // namespace
}  // namespace rackbook
