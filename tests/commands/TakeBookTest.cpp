// Two books that become one.
#include <gtest/gtest.h>

#include <filesystem>
#include <random>

#include "Script.h"
#include "support/RunShell.h"

namespace rackbook {
namespace {

namespace fs = std::filesystem;

class TakeBookTest : public ::testing::Test {
protected:
    TakeBookTest() { runScript("studio"); }

    static std::string run(const std::string& command) { return transcriptOf(splitWords(command)); }
    static bool says(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }
    static void copy(const std::string& from, const std::string& to) {
        fs::copy_file(from + ".rackbook", to + ".rackbook", fs::copy_options::overwrite_existing);
    }
    static std::string take(const std::string& other, const std::string& into,
                            const std::string& more = "") {
        return run("rackbook take-book " + other + ".rackbook --book " + into + ".rackbook" + more);
    }
    // Everything that a book says now, kind by kind and sorted: the order of recording differs.
    static std::string saidBy(const std::string& book) {
        fs::remove_all("said");
        run("rackbook write-out --with-contacts said --book " + book + ".rackbook");
        return test::runOn("", "cat said/*.json | grep -v '^ *[{}]' | sed 's/,$//' | sort").output;
    }
    static std::string hashOf(const std::string& book) {
        return run("rackbook verify --json --book " + book + ".rackbook");
    }

    const FreshFolder m_folder;
};

TEST_F(TakeBookTest, TakesWhatIsNewAndWhatWentOn) {
    copy("studio", "laptop");
    run("rackbook pull TIDE 1 1-4 --spoiled 4 --start 2026-03-20 --hang line --book "
        "laptop.rackbook");
    run("rackbook enter place line name=Loft --reason \"a slip\" --book laptop.rackbook");
    const std::string tried = take("laptop", "studio", " --dry-run");
    EXPECT_TRUE(says(tried, "Tried only")) << tried;
    const std::string taken = take("laptop", "studio");
    EXPECT_TRUE(says(taken, "taken into studio.rackbook")) << taken;
    EXPECT_EQ(saidBy("studio"), saidBy("laptop"));
    EXPECT_TRUE(says(run("rackbook history place line --json"), "from laptop.rackbook"));
    EXPECT_FALSE(says(run("rackbook verify"), "[1]"));
    const std::string before = hashOf("studio");
    EXPECT_TRUE(says(take("laptop", "studio"), "says nothing that this one does not"));
    EXPECT_EQ(hashOf("studio"), before);
}

TEST_F(TakeBookTest, ShowsBothSidesAndLetsPeopleDecide) {
    copy("studio", "laptop");
    run("rackbook enter place line name=Loft --reason here");
    run("rackbook enter place line name=Barn --reason there --book laptop.rackbook");
    const std::string before = hashOf("studio");
    const std::string told = take("laptop", "studio");
    EXPECT_TRUE(says(told, "here: corrected")) << told;
    EXPECT_TRUE(says(told, "name Loft") && says(told, "name Barn")) << told;
    EXPECT_TRUE(says(told, "[1]")) << told;
    EXPECT_EQ(hashOf("studio"), before);
    EXPECT_TRUE(says(take("laptop", "studio", " --there \"place lime\""), "[2]"));
    EXPECT_FALSE(says(take("laptop", "studio", " --there \"place line\""), "["));
    EXPECT_TRUE(says(run("rackbook show place line"), "Barn"));
    // Now the studio follows the laptop, and the laptop has nothing to take.
    EXPECT_TRUE(says(take("studio", "laptop"), "says nothing that this one does not") ||
                !says(take("studio", "laptop"), "[1]"));
    EXPECT_EQ(saidBy("studio"), saidBy("laptop"));
}

TEST_F(TakeBookTest, TellsANumberThatWasGivenTwice) {
    copy("studio", "laptop");
    run("rackbook pull TIDE 1 1-4 --start 2026-03-20");
    copy("studio", "laptop");
    run("rackbook sign TIDE 1=1/8 --on 2026-03-21");
    run("rackbook sign TIDE 2=1/8 --on 2026-03-21 --book laptop.rackbook");
    const std::string before = hashOf("studio");
    const std::string refused = take("laptop", "studio");
    EXPECT_TRUE(says(refused, "1/8") && says(refused, "designation-twice")) << refused;
    EXPECT_TRUE(says(refused, "[1]")) << refused;
    EXPECT_EQ(hashOf("studio"), before);
    // Seen, and taken all the same: the audit tells it from then on.
    const std::string taken = take("laptop", "studio", " --with-findings");
    EXPECT_TRUE(says(taken, "designation-twice") && !says(taken, "[1]")) << taken;
    EXPECT_TRUE(says(run("rackbook audit --rule designation-twice"), "[1]"));
}

TEST_F(TakeBookTest, TakesStrikesAndPhotographs) {
    run("rackbook enter lot spare lotKind=ink colourWords=Blue");
    copy("studio", "laptop");
    run("rackbook strike lot spare --reason \"never bought\" --book laptop.rackbook");
    fs::copy_file(RACKBOOK_SOURCE "/tests/exchange/pictures/plain.jpg", "plain.jpg");
    run("rackbook attach plain.jpg --edition TIDE --id TIDE/seen --book laptop.rackbook");
    const std::string taken = take("laptop", "studio");
    EXPECT_FALSE(says(taken, "[")) << taken;
    EXPECT_TRUE(says(taken, "struck out")) << taken;
    EXPECT_EQ(saidBy("studio"), saidBy("laptop"));
    EXPECT_TRUE(says(run("rackbook attached TIDE/seen --out seen.jpg"), "seen.jpg"));
    EXPECT_TRUE(says(run("rackbook show lot spare"), "[2]"));
}

// What happens on one machine: its own tins, and changes to those that are its turn.
void live(const std::string& book, int turn, std::mt19937& random) {
    const auto run = [&](const std::string& command) {
        transcriptOf(splitWords("rackbook " + command + " --book " + book + ".rackbook"));
    };
    std::uniform_int_distribution<int> any(0, 5);
    for (int i = 0; i < 12; ++i) {
        const std::string shared = "tin-" + std::to_string(2 * any(random) + turn);
        const std::string own = book + "-" + std::to_string(any(random));
        switch (any(random)) {
            case 0:
            case 1:
                run("enter lot " + own + " lotKind=ink colourWords=\"Blue " + std::to_string(i) +
                    "\" --reason \"read again\"");
                break;
            case 2:
                run("enter lot " + shared + " colourWords=\"Red " + std::to_string(i) +
                    "\" --reason \"read wrongly\"");
                break;
            case 3:
                run("enter lot " + shared + " finishedOn=2026-03-2" + std::to_string(any(random)) +
                    " --changed-on 2026-03-25");
                break;
            case 4:
                run("strike lot " + own + " --reason twice");
                break;
            default:
                run("strike lot " + shared + " --reason twice");
        }
    }
}

TEST_F(TakeBookTest, CommutesOnRandomHistories) {
    for (int tin = 0; tin < 12; ++tin)
        run("rackbook enter lot tin-" + std::to_string(tin) + " lotKind=ink colourWords=Red");
    for (unsigned seed = 1; seed <= 6; ++seed) {
        std::mt19937 random(seed);
        copy("studio", "left");
        copy("studio", "right");
        live("left", 0, random);
        live("right", 1, random);
        copy("left", "one");
        copy("right", "other");
        ASSERT_FALSE(says(take("right", "one"), "[")) << seed;
        ASSERT_FALSE(says(take("left", "other"), "[")) << seed;
        EXPECT_EQ(saidBy("one"), saidBy("other")) << seed;
        const std::string before = hashOf("one");
        take("right", "one");
        take("other", "one");
        EXPECT_EQ(hashOf("one"), before) << seed;
        // And the machines themselves, one after the other.
        take("right", "left");
        take("left", "right");
        EXPECT_EQ(saidBy("left"), saidBy("right")) << seed;
        EXPECT_EQ(saidBy("left"), saidBy("one")) << seed;
        EXPECT_FALSE(says(run("rackbook verify --book left.rackbook"), "[1]")) << seed;
    }
}

// Both change the same tins: whichever book is asked, the same records are told, and none is taken.
TEST_F(TakeBookTest, ContradictsAlikeFromBothSides) {
    for (int tin = 0; tin < 12; ++tin)
        run("rackbook enter lot tin-" + std::to_string(tin) + " lotKind=ink colourWords=Red");
    const auto namesIn = [](const std::string& told) {
        return test::runOn(told, "grep -o '^lot tin-[0-9]*' \"$FILE\" | sort").output;
    };
    bool any = false;
    for (unsigned seed = 1; seed <= 4; ++seed) {
        std::mt19937 random(seed);
        copy("studio", "left");
        copy("studio", "right");
        live("left", 0, random);
        live("right", 0, random);
        const std::string left = hashOf("left");
        const std::string right = hashOf("right");
        const std::string leftTold = take("right", "left", " --dry-run");
        const std::string rightTold = take("left", "right", " --dry-run");
        EXPECT_EQ(namesIn(leftTold), namesIn(rightTold)) << seed;
        any = any || says(leftTold, "said differently");
        EXPECT_EQ(hashOf("left"), left);
        EXPECT_EQ(hashOf("right"), right);
    }
    EXPECT_TRUE(any);
}

}  // namespace
}  // namespace rackbook
