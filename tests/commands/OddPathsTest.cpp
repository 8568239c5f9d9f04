// Names and links in what comes from other hands: nothing is read or written outside its folder.
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "Script.h"
#include "base/Files.h"
#include "support/RunShell.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

namespace fs = std::filesystem;

class OddPathsTest : public ::testing::Test {
protected:
    OddPathsTest() {
        // A pipe that is waited for, or a link that is followed in circles, would never end.
        alarm(300);
        runScript("studio");
        fs::copy_file(RACKBOOK_SOURCE_DIR "/tests/exchange/pictures/plain.jpg", "plain.jpg");
        run("rackbook attach plain.jpg --edition TIDE --taken-on 2026-03-20");
    }
    ~OddPathsTest() override { alarm(0); }

    static std::string run(const std::string& command) { return transcriptOf(splitWords(command)); }
    static bool says(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }
    static std::string shell(const std::string& command) {
        const test::ShellResult result = test::runOn("", command);
        EXPECT_EQ(result.exitCode, 0) << result.output;
        return result.output;
    }
    static std::set<std::string> namesIn(const std::string& folder) {
        std::set<std::string> names;
        for (const auto& entry : fs::directory_iterator(folder))
            names.insert(entry.path().filename().string());
        return names;
    }
    // Takes the sums of a bag anew, as a forger would.
    static void sealAgain(const std::string& bag) {
        shell("cd " + bag +
              " && for n in 256 512; do find -L data -type f | sort | xargs -d '\\n' sha${n}sum > "
              "manifest-sha$n.txt; done; rm -f tagmanifest-*; [ -L bag-info.txt ] || sed -i "
              "'/Oxum/d' bag-info.txt");
    }

    const FreshFolder m_folder;
};

TEST_F(OddPathsTest, LinksInABagAreNotFollowed) {
    test::putFile("outside.json", "{\"record\":\"place\",\"id\":\"x\",\"name\":\"secret\"}");
    ASSERT_TRUE(says(run("rackbook write-bag --with-contacts whole"), "whole is a bag now"));
    struct Case {
        const char* link;
        const char* to;
    };
    for (const Case& one : {Case{"data/records/extra.json", "/etc/passwd"},
                            Case{"data/records/outside.json", "../../../outside.json"},
                            Case{"data/records/around", ".."}, Case{"data/all", "/etc"},
                            Case{"data/nowhere", "missing"}, Case{"data/itself", "itself"},
                            Case{"fetch.txt", "/etc/passwd"}, Case{"bag-info.txt", "/etc/passwd"},
                            Case{"data/journal.jsonl", "/etc/passwd"}}) {
        fs::copy("whole", "bag", fs::copy_options::recursive);
        const std::string link = std::string("bag/") + one.link;
        fs::remove(link);
        fs::create_symlink(one.to, link);
        if (std::string(one.link).find("around") == std::string::npos &&
            std::string(one.link).find("data/all") == std::string::npos &&
            std::string(one.to).find('/') != std::string::npos)
            sealAgain("bag");
        const std::string checked = run("rackbook check-bag bag");
        EXPECT_TRUE(says(checked, "a link stands in the bag")) << one.link << checked;
        EXPECT_TRUE(says(checked, "[1]")) << one.link;
        const std::string taken = run("rackbook take-bag bag --book again.rackbook");
        EXPECT_TRUE(says(taken, "[3]")) << one.link << taken;
        for (const std::string& told : {checked, taken})
            EXPECT_FALSE(says(told, "root:") || says(told, "secret")) << told;
        EXPECT_FALSE(fs::exists("again.rackbook")) << one.link;
        fs::remove_all("bag");
    }
}

TEST_F(OddPathsTest, LinksInAFolderOfRecordsAreNotFollowed) {
    fs::create_directories("given/deep");
    fs::create_directories("outside");
    const std::string place =
        "{\"record\":\"place\",\"name\":\"Loft\",\"placeKind\":\"rack\",\"id\":";
    test::putFile("given/one.json", place + "\"one\"}");
    test::putFile("outside/two.json", place + "\"two\"}");
    fs::create_symlink("../outside/two.json", "given/two.json");
    fs::create_symlink("../outside", "given/away");
    fs::create_symlink("..", "given/deep/around");
    fs::create_symlink("itself.json", "given/itself.json");
    fs::create_symlink("/", "given/attachments");
    ASSERT_EQ(mkfifo("given/pipe.json", 0600), 0);
    const std::string taken = run("rackbook take-in given");
    EXPECT_TRUE(says(taken, "1 record taken")) << taken;
    for (const char* link :
         {"two.json", "away", "around", "attachments", "pipe.json", "itself.json"})
        EXPECT_TRUE(says(taken, std::string(link) + "\n")) << link << "\n" << taken;
    EXPECT_FALSE(says(taken, "/etc")) << taken;
    const std::string places = run("rackbook list place");
    EXPECT_TRUE(says(places, "one"));
    EXPECT_FALSE(says(places, "two")) << places;
}

// An attachment comes in from its folder alone, whatever its record calls itself.
TEST_F(OddPathsTest, AttachmentsLeadNowhere) {
    run("rackbook write-out one");
    const std::string hash = shell("sha256sum plain.jpg | head -c 64");
    for (const std::string& forged : std::vector<std::string>{
             "../../../etc/passwd", hash.substr(0, 63) + "/", "/etc/passwd", hash + "/..", ""}) {
        std::string records = test::bytesOf("one/attachment.json");
        records.replace(records.find(hash), 64, forged);
        test::putFile("forged.json", records);
        const std::string before = stateOfBook();
        const std::string said = run("rackbook take-in forged.json --reason forged");
        EXPECT_TRUE(says(said, "[3]")) << said;
        EXPECT_TRUE(says(said, "sha256")) << said;
        EXPECT_EQ(stateOfBook(), before);
    }
    // Ids may hold points and slashes.
    int number = 0;
    for (const std::string id : {"../../up", "..", "a/..", "/etc/x", "a/./b", "CON", "...", "x."}) {
        std::string records = test::bytesOf("one/attachment.json");
        const std::size_t at = records.find("\"id\": \"") + 7;
        records.replace(at, records.find('"', at) - at, id);
        test::putFile("odd.json", records);
        const std::string taken = run("rackbook take-in odd.json");
        if (!says(taken, "1 record taken"))
            continue;
        const std::string inside = "inside" + std::to_string(number++);
        fs::create_directories(inside + "/deep");
        const std::set<std::string> before = namesIn(inside);
        fs::current_path(inside + "/deep");
        const std::string written =
            transcriptOf({"rackbook", "attached", id, "--book", "../../studio.rackbook"});
        const std::size_t files = namesIn(".").size();
        fs::current_path("../..");
        EXPECT_EQ(files, says(written, "bytes") ? 1u : 0u) << id << written;
        EXPECT_EQ(namesIn(inside), before) << id;
    }
    EXPECT_GT(number, 2);
    EXPECT_FALSE(fs::exists("up.jpg"));
}

// Ids that come to one file name stay two files in a bag.
TEST_F(OddPathsTest, DescriptionsInABagDoNotHideOneAnother) {
    run("rackbook write-out one");
    const nlohmann::json tide =
        nlohmann::json::parse(test::bytesOf("one/edition.json"))["records"][0];
    nlohmann::json editions = nlohmann::json::array();
    for (const char* id : {"a/b", "a-b", "A-B", "../../x", "..", "CON", "nul"}) {
        const std::string number = std::to_string(editions.size());
        editions.push_back(tide);
        editions.back()["id"] = id;
        editions.back()["code"] = "E" + number;
        editions.back()["title"] = "T" + number;
    }
    test::putFile("editions.json", editions.dump());
    const std::string taken = run("rackbook take-in editions.json");
    ASSERT_TRUE(says(taken, "7 records taken")) << taken;
    ASSERT_TRUE(says(run("rackbook write-bag --with-contacts bag"), "bag is a bag now"));
    EXPECT_EQ(namesIn("bag/data/descriptions").size(), 8u);
    const std::string titles =
        shell("grep -ho '<dc:title>T.*</dc:title>' bag/data/descriptions/* | sort");
    for (std::size_t i = 0; i < editions.size(); ++i)
        EXPECT_TRUE(says(titles, ">T" + std::to_string(i) + "<")) << titles;
    EXPECT_TRUE(says(run("rackbook check-bag bag"), "is what was packed"));
    EXPECT_FALSE(fs::exists("../x.xml") || fs::exists("bag/x.xml") || fs::exists("x.xml"));
}

// Names that are no text are told, and nothing is taken without what lies under them.
TEST_F(OddPathsTest, NamesThatAreNoTextAreTold) {
    fs::create_directories("given");
    test::putFile("given/a\xff.json", "[]");
    test::putFile("given/b.json", "[]");
    const std::string taken = run("rackbook take-in given");
    EXPECT_TRUE(says(taken, "no file that can be read: given/a\\uFFFD.json")) << taken;
    EXPECT_FALSE(says(taken, "b.json")) << taken;
    run("rackbook write-bag bag");
    test::putFile("bag/data/a\xff", "x");
    const std::string checked = run("rackbook check-bag bag");
    EXPECT_TRUE(says(checked, "the path is no text in UTF-8")) << checked;
    EXPECT_TRUE(says(checked, "[1]"));
}

// What somebody put where a folder is about to be made stays as it is.
TEST_F(OddPathsTest, FoldersAreNotMadeThroughLinks) {
    fs::create_directories("outside");
    test::putFile("outside/kept", "kept");
    for (const char* verb : {"write-out", "write-bag"}) {
        fs::create_symlink("outside", "out.rackbook-unfinished");
        EXPECT_TRUE(says(run(std::string("rackbook ") + verb + " out"), "[3]")) << verb;
        fs::remove("out.rackbook-unfinished");
        fs::create_symlink("nowhere", "out.rackbook-unfinished");
        EXPECT_TRUE(says(run(std::string("rackbook ") + verb + " out"), "[3]")) << verb;
        fs::remove("out.rackbook-unfinished");
        fs::create_symlink("outside", "out");
        EXPECT_TRUE(says(run(std::string("rackbook ") + verb + " out"), "[2]")) << verb;
        fs::remove("out");
        EXPECT_FALSE(fs::exists("nowhere")) << verb;
        EXPECT_EQ(namesIn("outside"), std::set<std::string>{"kept"}) << verb;
    }
    const std::string longName(300, 'x');
    EXPECT_TRUE(says(run("rackbook write-out " + longName), "[3]"));
    EXPECT_TRUE(says(run("rackbook write-table lot --out " + longName), "[3]"));
}

}  // namespace
}  // namespace rackbook
