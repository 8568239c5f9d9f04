// Packing for an archive, and a book again from what was packed.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "Script.h"
#include "support/RunShell.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

class BagVerbsTest : public ::testing::Test {
protected:
    BagVerbsTest() {
        runScript("studio");
        run("rackbook pull TIDE 1 1-4 --spoiled 4 --start 2026-03-20 --hang line");
        run("rackbook enter place line name=\"Loft\" --reason \"a slip\"");
        std::filesystem::copy_file(RACKBOOK_SOURCE_DIR "/tests/exchange/pictures/plain.jpg",
                                   "plain.jpg");
        run("rackbook attach plain.jpg --edition TIDE --taken-on 2026-03-20");
    }

    static std::string run(const std::string& command) { return transcriptOf(splitWords(command)); }
    static bool says(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }
    // Every byte of it, by another reader of the file: Python's sqlite3.
    static std::string journalOf(const std::string& book) {
        return test::runOn("", "python3 -c \"import sqlite3; b = sqlite3.connect('file:" + book +
                                   "?mode=ro', uri=True); [print(r) for t in ('journal', "
                                   "'attachmentBytes') for r in b.execute('SELECT * FROM ' + t)]\"")
            .output;
    }

    const FreshFolder m_folder;
};

TEST_F(BagVerbsTest, AWholeBookComesBackEqual) {
    ASSERT_TRUE(says(run("rackbook write-bag --with-contacts bag"), "bag is a bag now"));
    EXPECT_TRUE(says(run("rackbook check-bag bag"), "is what was packed"));
    const std::string taken = run("rackbook take-bag bag --book again.rackbook");
    EXPECT_TRUE(says(taken, "every one with its hash as it was recorded")) << taken;
    EXPECT_EQ(run("rackbook verify").substr(std::string("studio").size()),
              run("rackbook verify --book again.rackbook").substr(std::string("again").size()));
    EXPECT_EQ(journalOf("studio.rackbook"), journalOf("again.rackbook"));
    EXPECT_GT(journalOf("again.rackbook").size(), 10000u);
}

TEST_F(BagVerbsTest, AnEditionComesBackRecordByRecord) {
    ASSERT_TRUE(says(run("rackbook write-bag --edition TIDE bag"), "bag is a bag now"));
    EXPECT_FALSE(std::filesystem::exists("bag/data/journal.jsonl"));
    const std::string taken = run("rackbook take-bag bag --book again.rackbook");
    EXPECT_TRUE(says(taken, "The bag holds no journal")) << taken;
    run("rackbook write-out --edition TIDE one");
    run("rackbook write-out --edition TIDE two --book again.rackbook");
    const test::ShellResult difference = test::runOn("", "diff -r one two");
    EXPECT_EQ(difference.exitCode, 0) << difference.output;
    EXPECT_FALSE(says(run("rackbook verify --book again.rackbook"), "[1]"));
}

TEST_F(BagVerbsTest, NothingIsMadeOfWhatWasChanged) {
    run("rackbook write-bag --with-contacts bag");
    std::string journal = test::bytesOf("bag/data/journal.jsonl");
    const std::size_t at = journal.find("Loft");
    ASSERT_NE(at, std::string::npos);
    test::putFile("bag/data/journal.jsonl", journal.replace(at, 4, "Barn"));
    EXPECT_TRUE(says(run("rackbook check-bag bag"), "[1]"));
    EXPECT_TRUE(says(run("rackbook take-bag bag --book again.rackbook"), "[3]"));
    EXPECT_FALSE(std::filesystem::exists("again.rackbook"));
    // A forger makes the manifests again, and the chain of hashes still tells.
    const test::ShellResult forged = test::runOn(
        "",
        "cd bag && for n in 256 512; do find data -type f | sort | xargs -d '\\n' sha${n}sum "
        "> manifest-sha$n.txt; done; rm tagmanifest-*; sed -i '/Oxum/d' bag-info.txt");
    ASSERT_EQ(forged.exitCode, 0) << forged.output;
    EXPECT_FALSE(says(run("rackbook check-bag bag"), "[1]"));
    const std::string refused = run("rackbook take-bag bag --book again.rackbook");
    EXPECT_TRUE(says(refused, "its record was changed after it was recorded")) << refused;
    EXPECT_FALSE(std::filesystem::exists("again.rackbook"));
}

TEST_F(BagVerbsTest, AnOldBookIsLeftAlone) {
    run("rackbook write-bag --with-contacts bag");
    const std::string before = stateOfBook();
    EXPECT_TRUE(says(run("rackbook take-bag bag"), "[2]"));
    EXPECT_EQ(stateOfBook(), before);
    EXPECT_TRUE(says(run("rackbook write-bag bag"), "bag is not an empty folder"));
}

TEST_F(BagVerbsTest, ContactsStayUnlessAskedFor) {
    run("rackbook enter party maren contact=\"Weir lane 3\" --changed-on 2026-03-20");
    run("rackbook write-bag bag");
    const auto holding = [](const std::string& folder) {
        return test::runOn("", "grep -rlF 'Weir lane 3' " + folder).output;
    };
    EXPECT_EQ(holding("bag"), "");
    run("rackbook write-bag --with-contacts all");
    EXPECT_TRUE(says(holding("all"), "journal.jsonl")) << holding("all");
}

// Dublin Core is read by another parser: xmllint, or Python's.
TEST_F(BagVerbsTest, DescriptionsAreReadByOthers) {
    run("rackbook write-bag bag");
    const test::ShellResult read = test::runOn(
        "",
        "python3 -c \"import xml.etree.ElementTree as t; r = t.parse('bag/data/descriptions/"
        "TIDE.xml').getroot(); print(r.tag); [print(e.tag, e.text) for e in r]\"");
    EXPECT_EQ(read.exitCode, 0) << read.output;
    EXPECT_TRUE(says(read.output, "{http://www.openarchives.org/OAI/2.0/oai_dc/}dc"))
        << read.output;
    EXPECT_TRUE(says(read.output, "{http://purl.org/dc/elements/1.1/}identifier TIDE"))
        << read.output;
}

}  // namespace
}  // namespace rackbook
