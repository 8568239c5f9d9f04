// Striking out records that should never have been recorded.
#include <gtest/gtest.h>

#include "StoreBook.h"
#include "store/RecordReader.h"

namespace rackbook {
namespace {

using test::problemsOf;
using test::takeSound;
using test::textOfProblems;

class StrikeTest : public test::StoreBook {
protected:
    StrikeTest() {
        takeSound(book(), test::namedRecords());
        takeSound(book(), test::fullRecords());
    }

    // Strikes records out by kind and id, with the reason that is given.
    template <class R>
    IntakeResult strike(const std::vector<std::string>& ids,
                        const std::optional<std::string>& reason = "entered twice") {
        std::vector<Entry> entries;
        for (const std::string& id : ids) {
            R record = findIn<R>(book(), id).value_or(R{});
            record.id = id;
            Entry entry = test::entryOf(record);
            entry.strikes = true;
            entries.push_back(entry);
        }
        IntakeTerms terms = test::termsOfTest();
        terms.reason = reason;
        return take(book(), entries, terms);
    }

    void expectSound() {
        for (const Finding& finding : verify(book(), decodeRecord).findings)
            ADD_FAILURE() << describe(finding);
    }
};

TEST_F(StrikeTest, TakesTheRecordAwayAndKeepsItInTheJournal) {
    const std::int64_t before = journalLength(book());
    const IntakeResult result = strike<Pull>({"full-pull-0"});
    EXPECT_EQ(textOfProblems(result), "");
    EXPECT_EQ(result.outcomes, std::vector<EntryOutcome>{EntryOutcome::struck});
    EXPECT_FALSE(findIn<Pull>(book(), "full-pull-0"));
    EXPECT_EQ(numberFrom("SELECT count(*) FROM pull_impressions WHERE pull = 3"), 0);
    EXPECT_EQ(journalLength(book()), before + 1);
    EXPECT_EQ(textFrom("SELECT action || '|' || reason FROM journal ORDER BY entry DESC LIMIT 1"),
              "strike|entered twice");
    EXPECT_EQ(numberFrom("SELECT earlier FROM journal ORDER BY entry DESC LIMIT 1"),
              numberFrom("SELECT entry FROM journal WHERE id = 'full-pull-0' AND action = "
                         "'record'"));
    expectSound();
}

TEST_F(StrikeTest, StaysStruckWhenTheTablesAreMadeAgain) {
    strike<Pull>({"pull-b"});
    rebuild(book(), decodeRecord);
    EXPECT_FALSE(findIn<Pull>(book(), "pull-b"));
    EXPECT_TRUE(findIn<Pull>(book(), "full-pull-0"));
    expectSound();
}

TEST_F(StrikeTest, NeedsAReasonAndARecord) {
    EXPECT_EQ(textOfProblems(strike<Pull>({"pull-b"}, std::nullopt)),
              "0 : striking a record out needs a reason (). Give --reason.");
    EXPECT_EQ(textOfProblems(strike<Pull>({"pull-x"})),
              "0 : there is no such record (). Nothing need be struck out.");
    EXPECT_TRUE(findIn<Pull>(book(), "pull-b"));
}

TEST_F(StrikeTest, IsRefusedWhereOtherRecordsNameIt) {
    const std::int64_t before = journalLength(book());
    EXPECT_EQ(textOfProblems(strike<Lot>({"lot-a"})),
              "0 : other records name it: drawdown, stockTake and weighing (). Strike those out "
              "first, or correct what they name.");
    EXPECT_TRUE(findIn<Lot>(book(), "lot-a"));
    EXPECT_EQ(journalLength(book()), before);
    expectSound();
}

TEST_F(StrikeTest, NeverGivesTheIdAgain) {
    strike<Weighing>({"full-weighing-2"});
    Weighing again;
    again.id = "full-weighing-2";
    again.mix.id = "mix-a";
    again.act = WeighingAct::discard;
    EXPECT_EQ(problemsOf(book(), {again}),
              "0 /id: a record of that id was struck out (full-weighing-2). Give this one an id of "
              "its own.");
}

// The row number of the last record is not given to the next one, or the tables would not come out
// the same from the journal.
TEST_F(StrikeTest, LeavesTheRowNumbersOfOthersAlone) {
    const std::int64_t last = numberFrom("SELECT max(key) FROM weighing");
    ASSERT_EQ(numberFrom("SELECT key FROM weighing WHERE id = 'full-weighing-2'"), last);
    strike<Weighing>({"full-weighing-2"});
    Weighing next;
    next.id = "next";
    next.mix.id = "mix-a";
    next.act = WeighingAct::discard;
    takeSound(book(), {next});
    EXPECT_EQ(numberFrom("SELECT key FROM weighing WHERE id = 'next'"), last + 1);
    expectSound();
    rebuild(book(), decodeRecord);
    EXPECT_EQ(numberFrom("SELECT key FROM weighing WHERE id = 'next'"), last + 1);
    expectSound();
}

TEST_F(StrikeTest, TakesARecordAndThoseThatNameItInOneIntake) {
    Mix mix;
    mix.id = "extra";
    mix.name = "n";
    Weighing weighing;
    weighing.id = "extra-1";
    weighing.mix.id = "extra";
    weighing.act = WeighingAct::discard;
    takeSound(book(), {mix, weighing});
    std::vector<Entry> entries = test::entriesOf({weighing, mix});
    for (Entry& entry : entries)
        entry.strikes = true;
    IntakeTerms terms = test::termsOfTest();
    terms.reason = "never happened";
    EXPECT_EQ(textOfProblems(take(book(), entries, terms)), "");
    EXPECT_FALSE(findIn<Mix>(book(), "extra"));
    expectSound();
}

}  // namespace
}  // namespace rackbook
