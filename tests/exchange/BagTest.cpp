// Bags, by the rules of RFC 8493; section numbers stand beside the checks.
#include "exchange/Bag.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "support/RunShell.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

namespace fs = std::filesystem;
using test::bytesOf;
using test::putFile;

class BagTest : public ::testing::Test {
protected:
    BagTest() {
        put("data/hello.txt", "hello");
        put("data/letters/å b.txt", "");
        finishBag(bag(), {{"Source-Organization", "North shed"}});
    }

    std::string bag() const { return m_folder.file("bag"); }
    void put(const std::string& name, const std::string& bytes) const {
        const fs::path path = fs::path(bag()) / name;
        fs::create_directories(path.parent_path());
        putFile(path.string(), bytes);
    }
    void add(const std::string& name, const std::string& bytes) const {
        put(name, bytesOf(bag() + "/" + name) + bytes);
    }
    // Manifests of tag files are optional (2.2.1), and in the way of tests that change a tag file.
    void dropTagManifests() const {
        fs::remove(bag() + "/tagmanifest-sha256.txt");
        fs::remove(bag() + "/tagmanifest-sha512.txt");
    }
    bool isValid() const { return checkBag(bag()).isValid(); }
    // Whether one of the findings says it.
    bool finds(const std::string& words) const {
        for (const Finding& finding : checkBag(bag()).findings)
            if (describe(finding).find(words) != std::string::npos)
                return true;
        return false;
    }

    const test::TempFolder m_folder;
};

TEST_F(BagTest, IsValidAsItIsWritten) {
    const BagReport report = checkBag(bag());
    EXPECT_TRUE(report.isValid());
    EXPECT_TRUE(report.findings.empty());
    EXPECT_EQ(report.version, "1.0");
    EXPECT_EQ(report.digests, (std::vector<std::string>{"sha256", "sha512"}));
    EXPECT_EQ(report.payload, (std::vector<std::string>{"data/hello.txt", "data/letters/å b.txt"}));
    ASSERT_EQ(report.info.size(), 2u);
    // 2.2.2: octets and number of files.
    EXPECT_EQ(report.info[1].first, "Payload-Oxum");
    EXPECT_EQ(report.info[1].second, "5.2");
    // 2.1.1: these two lines and nothing else.
    EXPECT_EQ(bytesOf(bag() + "/bagit.txt"),
              "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
}

// FIPS 180-4, the digests of "hello" by sha256sum and sha512sum of GNU coreutils.
TEST_F(BagTest, IsReadByCoreutils) {
    for (const char* name : {"sha256", "sha512"}) {
        const test::ShellResult payload = test::runOn(
            "", "cd '" + bag() + "' && " + name + "sum --strict -c manifest-" + name + ".txt");
        EXPECT_EQ(payload.exitCode, 0) << payload.output;
        const test::ShellResult tags = test::runOn(
            "", "cd '" + bag() + "' && " + name + "sum --strict -c tagmanifest-" + name + ".txt");
        EXPECT_EQ(tags.exitCode, 0) << tags.output;
    }
}

// Bags of coreutils' making, in the other digests that may occur (2.4).
TEST_F(BagTest, IsReadFromOtherHands) {
    for (const char* name : {"md5", "sha1", "sha224", "sha384"}) {
        fs::remove_all(bag());
        put("data/hello.txt", "hello");
        const test::ShellResult made = test::runOn(
            "", "cd '" + bag() + "' && " + name + "sum data/hello.txt > manifest-" + name +
                    ".txt && printf 'BagIt-Version: 1.0\\nTag-File-Character-Encoding: "
                    "UTF-8\\n' > bagit.txt");
        ASSERT_EQ(made.exitCode, 0) << made.output;
        EXPECT_TRUE(isValid()) << name;
        put("data/hello.txt", "hallo");
        EXPECT_FALSE(isValid()) << name;
    }
}

TEST_F(BagTest, MissesAndFindsFiles) {
    fs::remove(bag() + "/data/hello.txt");
    EXPECT_TRUE(finds("the file is not in the bag (data/hello.txt)"));
    put("data/hello.txt", "hello");
    EXPECT_TRUE(isValid());
    put("data/more.txt", "");
    EXPECT_TRUE(finds("no manifest names it")) << "3: complete";
    EXPECT_FALSE(isValid());
}

TEST_F(BagTest, WantsEveryFileInEveryManifest) {
    // 2.1.3: since 1.0.
    put("manifest-md5.txt", "5d41402abc4b2a76b9719d911017c592  data/hello.txt\n");
    EXPECT_TRUE(finds("a manifest leaves it out"));
    put("bagit.txt", "BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n");
    dropTagManifests();
    EXPECT_TRUE(isValid()) << "before 1.0 one manifest was enough";
}

TEST_F(BagTest, TellsChangedBytes) {
    put("data/hello.txt", "hellp");
    EXPECT_TRUE(finds("it has not the bytes that manifest-sha512.txt states"));
    EXPECT_FALSE(isValid());
    put("data/hello.txt", "hello");
    add("bag-info.txt", "Contact-Name: nobody\n");
    EXPECT_TRUE(finds("it has not the bytes that tagmanifest-sha256.txt states"));
}

TEST_F(BagTest, TellsAWrongSum) {
    dropTagManifests();
    put("bag-info.txt", "Payload-Oxum: 6.2\n");
    EXPECT_TRUE(finds("its payload is 5 bytes in 2 files, not what it states (6.2)"));
}

TEST_F(BagTest, WantsASoundDeclaration) {
    dropTagManifests();
    for (const char* text :
         {"", "BagIt-Version: 1.0\n", "BagIt-Version : 1.0\nTag-File-Character-Encoding: UTF-8\n",
          "BagIt-Version:1.0\nTag-File-Character-Encoding:UTF-8\n",
          "\xEF\xBB\xBF"
          "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n",
          "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n\n",
          "BagIt-Version: 9.0\nTag-File-Character-Encoding: UTF-8\n",
          "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-16\n"}) {
        put("bagit.txt", text);
        EXPECT_FALSE(isValid()) << text;
    }
    put("bagit.txt", "BagIt-Version: 1.0\r\nTag-File-Character-Encoding: UTF-8");
    EXPECT_TRUE(isValid()) << "2.1.1 and 2.1.3: lines end in LF, CR or CR LF";
    fs::remove(bag() + "/bagit.txt");
    EXPECT_TRUE(finds("it is no bag"));
}

TEST_F(BagTest, DecodesThreeCharactersAndNoMore) {
    // 2.1.3: LF, CR and % alone.
    fs::remove_all(bag());
    put("data/100%.txt", "");
    put("data/a\nb.txt", "");
    put("data/c%41.txt", "");
    finishBag(bag(), {});
    const std::string manifest = bytesOf(bag() + "/manifest-sha256.txt");
    EXPECT_NE(manifest.find("  data/100%25.txt\n"), std::string::npos);
    EXPECT_NE(manifest.find("  data/a%0Ab.txt\n"), std::string::npos);
    EXPECT_NE(manifest.find("  data/c%2541.txt\n"), std::string::npos);
    EXPECT_TRUE(isValid());
}

TEST_F(BagTest, FollowsNoPathOutOfIt) {
    // 5.1: absolute paths, the home and steps upwards.
    putFile(m_folder.file("outside.txt"), "hello");
    const std::string digest = bytesOf(bag() + "/manifest-sha256.txt").substr(0, 64);
    dropTagManifests();
    for (const std::string& path :
         {std::string("data/../../outside.txt"), m_folder.file("outside.txt"),
          std::string("~/outside.txt"), std::string("data\\..\\outside.txt"),
          std::string("C:/outside.txt"), std::string("../outside.txt"), std::string("data//x"),
          std::string("data/\xFF")}) {
        const std::string manifest = bytesOf(bag() + "/manifest-sha256.txt");
        add("manifest-sha256.txt", digest + "  " + path + "\n");
        EXPECT_FALSE(isValid()) << path;
        put("manifest-sha256.txt", manifest);
        EXPECT_TRUE(isValid()) << path;
    }
}

TEST_F(BagTest, FollowsNoLink) {
    putFile(m_folder.file("outside.txt"), "hello");
    fs::remove(bag() + "/data/hello.txt");
    fs::create_symlink(m_folder.file("outside.txt"), bag() + "/data/hello.txt");
    EXPECT_TRUE(finds("a link stands in the bag"));
    EXPECT_FALSE(isValid());
    fs::remove(bag() + "/data/hello.txt");
    put("data/hello.txt", "hello");
    fs::create_directory_symlink(m_folder.path(), bag() + "/data/all");
    EXPECT_TRUE(finds("a link stands in the bag"));
}

TEST_F(BagTest, NamesAFileOnce) {
    dropTagManifests();
    add("manifest-sha256.txt", bytesOf(bag() + "/manifest-sha256.txt"));
    EXPECT_TRUE(finds("the path is named on line 1 too"));
}

TEST_F(BagTest, WarnsOfNamesThatClash) {
    fs::remove_all(bag());
    put("data/Tide.txt", "");
    put("data/tide.txt", "");
    put("data/caf\xC3\xA9.txt", "");
    put("data/cafe\xCC\x81.txt", "");
    put("data/NUL.txt", "");
    finishBag(bag(), {});
    EXPECT_TRUE(isValid());
    EXPECT_TRUE(finds("on some machines it is the same file as another (data/Tide.txt)"));
    EXPECT_TRUE(finds("(data/cafe\xCC\x81.txt)"));
    EXPECT_TRUE(finds("some machines cannot have a file of that name"));
}

TEST_F(BagTest, FetchesNothing) {
    dropTagManifests();
    put("fetch.txt", "http://localhost/hello 5 data/hello.txt\n");
    fs::remove(bag() + "/data/hello.txt");
    EXPECT_TRUE(finds("nothing is fetched"));
    EXPECT_FALSE(isValid());
}

TEST_F(BagTest, PutsFoldedLinesTogether) {
    // 2.2.2
    dropTagManifests();
    put("bag-info.txt",
        "External-Description: of a\n  press\r\nContact-Name: one\nContact-Name: two\n");
    const BagReport report = checkBag(bag());
    EXPECT_TRUE(report.isValid());
    const std::vector<std::pair<std::string, std::string>> wanted = {
        {"External-Description", "of a press"}, {"Contact-Name", "one"}, {"Contact-Name", "two"}};
    EXPECT_EQ(report.info, wanted);
}

}  // namespace
}  // namespace rackbook
