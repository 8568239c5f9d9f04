// Taking back, and the history of records.
#include <gtest/gtest.h>

#include "Script.h"
#include "Talk.h"

namespace rackbook {
namespace {

class UndoTest : public ::testing::Test {
protected:
    UndoTest() { runScript("studio"); }

    static std::string run(const std::string& command) { return transcriptOf(splitWords(command)); }
    static bool says(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }

    const FreshFolder m_folder;
};

// A pull, the fate of its spoiled sheet and the move to the line go together.
TEST_F(UndoTest, TakesBackAllThatWasRecordedTogether) {
    const std::string before = run("rackbook show impression TIDE:4");
    run("rackbook pull TIDE 1 1-4 --spoiled 4 --start 2026-03-20 --hang line");
    ASSERT_NE(run("rackbook show impression TIDE:4"), before);
    const std::string undone = run("rackbook undo");
    EXPECT_TRUE(says(undone, "Recorded in studio.rackbook.")) << undone;
    EXPECT_EQ(run("rackbook show impression TIDE:4"), before);
    EXPECT_TRUE(says(run("rackbook list pull"), "no record") ||
                !says(run("rackbook list pull"), "TIDE:1-4"));
    EXPECT_FALSE(says(run("rackbook verify"), "[1]"));
}

TEST_F(UndoTest, SaysAgainWhatWasSaidBeforeACorrection) {
    run("rackbook enter place line name=\"Loft\" --reason \"a slip\"");
    EXPECT_TRUE(says(run("rackbook show place line"), "Loft"));
    run("rackbook undo --reason \"it was right\"");
    EXPECT_TRUE(says(run("rackbook show place line"), "Drying line"));
    const std::string history = run("rackbook history place line");
    EXPECT_TRUE(says(history, "Drying line → Loft")) << history;
    EXPECT_TRUE(says(history, "Loft → Drying line")) << history;
    EXPECT_TRUE(says(history, "it was right")) << history;
}

TEST_F(UndoTest, RefusesWhatLaterRecordsRestOn) {
    run("rackbook enter place attic name=Attic placeKind=room");
    run("rackbook hang TIDE:1 attic");
    const std::string before = stateOfBook();
    const std::string listed = run("rackbook history --last 2");
    ASSERT_TRUE(says(listed, "place attic new")) << listed;
    const std::size_t at = listed.find("place attic new");
    const std::size_t lineStart = listed.rfind('\n', at) + 1;
    const std::string number = std::to_string(std::stoi(listed.substr(lineStart)));
    const std::string undone = run("rackbook undo " + number);
    EXPECT_TRUE(says(undone, "[3]") || says(undone, "[2]")) << undone;
    EXPECT_EQ(stateOfBook(), before);
}

TEST_F(UndoTest, RefusesToBringBackWhatWasStruckOut) {
    run("rackbook hang TIDE:1 line --at 2026-03-20");
    run("rackbook undo");
    const std::string again = run("rackbook undo");
    EXPECT_TRUE(says(again, "was struck out then")) << again;
    EXPECT_TRUE(says(again, "[2]")) << again;
}

TEST_F(UndoTest, AsksOnATerminal) {
    run("rackbook hang TIDE:1 line --at 2026-03-20");
    const std::string before = stateOfBook();
    const Talk kept = talk({"rackbook", "undo"}, {"n"});
    EXPECT_TRUE(says(kept.text, "Left as it was.")) << kept.text;
    EXPECT_EQ(stateOfBook(), before);
    const Talk undone = talk({"rackbook", "undo"}, {"y"});
    EXPECT_EQ(undone.exitCode, 0) << undone.text;
    EXPECT_NE(stateOfBook(), before);
}

TEST_F(UndoTest, NeverTellsContacts) {
    run("rackbook enter party buyer name=Buyer roles=holder contact=secret@example.invalid");
    run("rackbook enter party buyer name=\"The buyer\" contact=other@example.invalid --reason x");
    for (const char* command :
         {"rackbook history party buyer", "rackbook history party buyer --json", "rackbook history",
          "rackbook undo --dry-run"})
        EXPECT_FALSE(says(run(command), "example.invalid")) << command << "\n" << run(command);
}

TEST_F(UndoTest, TellsTheHistoryOfWhatIsGone) {
    run("rackbook enter place attic name=Attic placeKind=room");
    run("rackbook undo");
    const std::string history = run("rackbook history place attic");
    EXPECT_TRUE(says(history, "struck out")) << history;
    EXPECT_TRUE(says(run("rackbook history place cellar"), "knows no place cellar"));
}

// What the book said on a day is without what was recorded or corrected later.
TEST_F(UndoTest, GoesBackToWhatTheBookSaid) {
    run("rackbook hang TIDE:1 line --at 2026-03-20");
    setenv("SOURCE_DATE_EPOCH", "1774908000", 1);  // 2026-03-30T22:00Z, the next day in Copenhagen
    run("rackbook enter place line name=Loft --reason \"a slip\"");
    run("rackbook enter place attic name=Attic placeKind=room");
    run("rackbook undo --reason \"not ours\"");
    EXPECT_TRUE(says(run("rackbook show place line"), "Loft"));
    EXPECT_TRUE(says(run("rackbook show place line --said-on 2026-03-30"), "Drying line"));
    EXPECT_TRUE(says(run("rackbook show place line --said-on 2026-03-31"), "Loft"));
    EXPECT_FALSE(says(run("rackbook list place --said-on 2026-03-31"), "Attic"));
    EXPECT_TRUE(says(run("rackbook show impression TIDE:1 --said-on 2026-03-28"), "Drying line") ||
                says(run("rackbook show impression TIDE:1 --said-on 2026-03-28"), "line"));
    EXPECT_TRUE(says(run("rackbook show place line --said-on 2026-03-27"), "no place"));
    EXPECT_TRUE(says(run("rackbook show place line --said-on 2026-03"), "takes one day"));
    EXPECT_FALSE(says(run("rackbook verify"), "[1]"));
}

}  // namespace
}  // namespace rackbook
