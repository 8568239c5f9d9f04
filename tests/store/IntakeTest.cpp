#include "store/Intake.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "StoreBook.h"
#include "store/RecordReader.h"

namespace rackbook {
namespace {

using test::correctionProblems;
using test::entriesOf;
using test::entryOf;
using test::problemsOf;
using test::takeSound;
using test::termsOfTest;

class IntakeTest : public test::StoreBook {
protected:
    std::int64_t entries() { return numberFrom("SELECT count(*) FROM journal"); }
};

Mix mixNamed(const std::string& id, const std::string& name) {
    Mix mix;
    mix.id = id;
    mix.name = name;
    return mix;
}

TEST_F(IntakeTest, RecordsEverythingInOneIntake) {
    const std::vector<Record> records = test::namedRecords();
    const IntakeResult result = takeSound(book(), records);
    EXPECT_EQ(result.outcomes, std::vector<EntryOutcome>(records.size(), EntryOutcome::recorded));
    EXPECT_EQ(result.firstEntry, 1);
    EXPECT_EQ(result.lastEntry, static_cast<std::int64_t>(records.size()));
    EXPECT_EQ(numberFrom("SELECT count(DISTINCT intake) FROM journal"), 1);
    EXPECT_EQ(textFrom("SELECT group_concat(DISTINCT recordedBy || recordedAt || action) FROM "
                       "journal"),
              "printer2026-03-04T08:30:00Zrecord");
    EXPECT_EQ(textFrom("SELECT happenedAt FROM journal WHERE id = 'look-a'"),
              textFrom("SELECT at FROM look WHERE id = 'look-a'"));
    EXPECT_EQ(numberFrom("SELECT count(*) FROM journal WHERE kind = 'mix' AND happenedAt IS NULL"),
              2);
}

TEST_F(IntakeTest, LeavesAloneWhatTheBookSaysAlready) {
    const std::vector<Record> records = test::namedRecords();
    takeSound(book(), records);
    const IntakeResult again = takeSound(book(), records);
    EXPECT_EQ(again.outcomes, std::vector<EntryOutcome>(records.size(), EntryOutcome::unchanged));
    EXPECT_EQ(again.firstEntry, 0);
    EXPECT_EQ(again.lastEntry, 0);
    EXPECT_EQ(entries(), static_cast<std::int64_t>(records.size()));
}

TEST_F(IntakeTest, WantsAReasonForACorrection) {
    takeSound(book(), {mixNamed("m", "grey")});
    EXPECT_EQ(problemsOf(book(), {mixNamed("m", "warm grey")}),
              "0 : it differs from what the book holds (mix m). Give --reason to correct "
              "the book, or --changed-on where the thing itself has changed.");
    EXPECT_EQ(findIn<Mix>(book(), "m")->name, "grey");
    EXPECT_EQ(entries(), 1);
}

TEST_F(IntakeTest, RecordsACorrectionBesideWhatWasWrong) {
    takeSound(book(), {mixNamed("m", "grey"), mixNamed("n", "red")});
    IntakeTerms terms = termsOfTest();
    terms.reason = "misread the lid";
    const IntakeResult result = take(
        book(), entriesOf({mixNamed("n", "red"), mixNamed("m", "green"), mixNamed("o", "new")}),
        terms);
    EXPECT_EQ(result.outcomes,
              (std::vector<EntryOutcome>{EntryOutcome::unchanged, EntryOutcome::corrected,
                                         EntryOutcome::recorded}));
    EXPECT_EQ(result.firstEntry, 3);
    EXPECT_EQ(result.lastEntry, 4);
    EXPECT_EQ(
        textFrom("SELECT action || '|' || earlier || '|' || reason FROM journal WHERE entry = "
                 "3"),
        "correct|1|misread the lid");
    EXPECT_EQ(
        textFrom("SELECT action FROM journal WHERE entry = 4 AND reason IS NULL AND earlier IS "
                 "NULL"),
        "record");
    EXPECT_EQ(textFrom("SELECT payload FROM journal WHERE entry = 1"),
              encodeRecord(mixNamed("m", "grey")));
    EXPECT_EQ(findIn<Mix>(book(), "m")->name, "green");
    EXPECT_EQ(numberFrom("SELECT entry FROM mix WHERE id = 'm'"), 3);
    EXPECT_EQ(numberFrom("SELECT intake FROM journal WHERE entry = 3"), 2);
}

TEST_F(IntakeTest, RecordsThatAThingHasChangedWithoutAReason) {
    takeSound(book(), {mixNamed("m", "grey")});
    Entry entry = entryOf(mixNamed("m", "grey, used up"));
    entry.changedOn = "2026-03-05";
    IntakeTerms terms = termsOfTest();
    terms.reason = "only for corrections";
    const IntakeResult result = take(book(), {entry}, terms);
    EXPECT_EQ(result.outcomes, std::vector<EntryOutcome>{EntryOutcome::updated});
    EXPECT_EQ(textFrom("SELECT action || '|' || earlier || '|' || happenedAt FROM journal WHERE "
                       "entry = 2 AND reason IS NULL"),
              "update|1|2026-03-05");
}

TEST_F(IntakeTest, NamesTheEntryThatStoodLastInAChainOfChanges) {
    takeSound(book(), {mixNamed("m", "1")});
    EXPECT_EQ(correctionProblems(book(), {mixNamed("m", "2")}), "");
    EXPECT_EQ(correctionProblems(book(), {mixNamed("m", "3")}), "");
    EXPECT_EQ(correctionProblems(book(), {mixNamed("m", "1")}), "");
    EXPECT_EQ(textFrom("SELECT group_concat(coalesce(earlier, 0)) FROM journal"), "0,1,2,3");
    EXPECT_EQ(findIn<Mix>(book(), "m")->name, "1");
}

TEST_F(IntakeTest, TakesAllOrNothing) {
    std::vector<Record> records = test::namedRecords();
    Layer stray;
    stray.id = "stray";
    stray.edition.id = "nowhere";
    stray.colourWords = "red";
    records.push_back(stray);
    EXPECT_EQ(problemsOf(book(), records),
              std::to_string(records.size() - 1) +
                  " /edition: there is no edition of that id (nowhere). Correct the id, or take "
                  "that record in too.");
    EXPECT_EQ(entries(), 0);
    for (std::size_t kind = 0; kind < enumNames<RecordKind>().size(); ++kind)
        EXPECT_EQ(countOf(book(), static_cast<RecordKind>(kind)), 0);
    records.pop_back();
    takeSound(book(), records);
}

TEST_F(IntakeTest, TellsEveryReferenceThatLeadsNowhere) {
    takeSound(book(), test::namedRecords());
    Pull pull;
    pull.id = "p";
    pull.layer.id = "layer-x";
    pull.portion = Ref<Mix>{"mix-x"};
    pull.impressions = {{"impression-a"}, {"impression-x"}, {"impression-y"}};
    pull.printer = Ref<Party>{"party-a"};
    EXPECT_EQ(problemsOf(book(), {pull, mixNamed("fine", "n")}),
              "0 /layer: there is no layer of that id (layer-x). Correct the id, or take that "
              "record in too.\n"
              "0 /portion: there is no mix of that id (mix-x). Correct the id, or take that record "
              "in too.\n"
              "0 /impressions/1: there is no impression of that id (impression-x). Correct the id, "
              "or take that record in too.\n"
              "0 /impressions/2: there is no impression of that id (impression-y). Correct the id, "
              "or take that record in too.");
    const IntakeResult result = take(book(), entriesOf({pull}), termsOfTest());
    EXPECT_EQ(result.problems[0].wanted, RecordKind::layer);
    EXPECT_EQ(result.problems[2].wanted, RecordKind::impression);
}

TEST_F(IntakeTest, DoesNotTakeAnIdOfAnotherKindForTheRightOne) {
    Weighing weighing;
    weighing.id = "w";
    weighing.mix.id = "same";
    weighing.act = WeighingAct::discard;
    Lot lot;
    lot.id = "same";
    lot.colourWords = "c";
    EXPECT_EQ(problemsOf(book(), {lot, weighing}),
              "1 /mix: there is no mix of that id (same). Correct the id, or take that record in "
              "too.");
}

TEST_F(IntakeTest, LetsRecordsNameEachOtherInAnyOrder) {
    std::vector<Record> records = test::namedRecords();
    std::reverse(records.begin(), records.end());
    takeSound(book(), records);
}

TEST_F(IntakeTest, TakesARecordThatStandsTwiceAndSaysTheSameOnce) {
    const IntakeResult result = takeSound(book(), {mixNamed("m", "grey"), mixNamed("m", "grey")});
    EXPECT_EQ(result.outcomes,
              (std::vector<EntryOutcome>{EntryOutcome::recorded, EntryOutcome::unchanged}));
    EXPECT_EQ(entries(), 1);
}

TEST_F(IntakeTest, RefusesARecordThatStandsTwiceAndDiffers) {
    EXPECT_EQ(problemsOf(book(), {mixNamed("m", "grey"), mixNamed("m", "red")}),
              "1 /id: the same record stands twice and differs (m). Keep one of the two, or give "
              "one an id of its own.");
    EXPECT_EQ(entries(), 0);
}

TEST_F(IntakeTest, TriesWithoutKeeping) {
    IntakeTerms terms = termsOfTest();
    terms.dryRun = true;
    const IntakeResult result = take(book(), entriesOf({mixNamed("m", "grey")}), terms);
    EXPECT_EQ(result.outcomes, std::vector<EntryOutcome>{EntryOutcome::recorded});
    EXPECT_EQ(entries(), 0);
    EXPECT_EQ(countOf(book(), RecordKind::mix), 0);
    takeSound(book(), {mixNamed("m", "grey")});
    EXPECT_EQ(entries(), 1);
}

TEST_F(IntakeTest, TellsHowFarItIs) {
    std::vector<Record> records;
    for (int i = 0; i < 2500; ++i)
        records.push_back(mixNamed("m" + std::to_string(i), "n"));
    std::vector<std::size_t> told;
    IntakeTerms terms = termsOfTest();
    terms.onProgress = [&](std::size_t done) { told.push_back(done); };
    take(book(), entriesOf(records), terms);
    EXPECT_EQ(told, (std::vector<std::size_t>{0, 1000, 2000}));
}

TEST_F(IntakeTest, TakesNothingWhereNothingIsGiven) {
    const IntakeResult result = takeSound(book(), {});
    EXPECT_TRUE(result.outcomes.empty());
    EXPECT_EQ(result.firstEntry, 0);
    EXPECT_EQ(entries(), 0);
}

TEST_F(IntakeTest, ReplacesTheListsOfARecordThatIsCorrected) {
    takeSound(book(), test::namedRecords());
    Pull pull = *findIn<Pull>(book(), "pull-a");
    pull.impressions = {{"impression-b"}, {"impression-a"}};
    EXPECT_EQ(correctionProblems(book(), {pull}), "");
    EXPECT_TRUE(sameFacts(*findIn<Pull>(book(), "pull-a"), pull));
    pull.impressions = {{"impression-b"}};
    EXPECT_EQ(correctionProblems(book(), {pull}), "");
    EXPECT_TRUE(sameFacts(*findIn<Pull>(book(), "pull-a"), pull));
}

}  // namespace
}  // namespace rackbook
