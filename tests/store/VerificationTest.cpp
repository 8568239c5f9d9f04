#include "store/Verification.h"

#include <gtest/gtest.h>

#include "StoreBook.h"
#include "base/Sha256.h"
#include "store/Journal.h"
#include "store/RecordReader.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::correctionProblems;
using test::takeSound;

constexpr const char* restore = "Keep the file as it is and restore the last backup.";
constexpr const char* remake = "Run rackbook verify --rebuild to make it again from the journal.";

class VerificationTest : public test::StoreBook {
protected:
    // The first entries are mixes, so that their numbers are easy to follow.
    VerificationTest() {
        std::vector<Record> records;
        for (const char* id : {"m1", "m2", "m3"}) {
            Mix mix;
            mix.id = id;
            mix.name = "stock";
            records.push_back(mix);
        }
        Weighing weighing;
        weighing.id = "w";
        weighing.mix.id = "m1";
        weighing.act = WeighingAct::discard;
        weighing.mass_g = 0.3;
        records.push_back(weighing);
        takeSound(book(), records);
        takeSound(book(), test::namedRecords());
        takeSound(book(), test::fullRecords());
    }

    Verification verified() { return verify(book(), decodeRecord); }

    std::string findings() {
        reopen();
        std::string text;
        for (const Finding& finding : verified().findings)
            text += (text.empty() ? "" : "\n") + finding.rule + " | " + describe(finding);
        return text;
    }
    std::string findingsAfter(const std::string& sql) {
        tamper(sql);
        return findings();
    }

    static std::string chain(int entry, const std::string& what) {
        return "chain | journal entry " + std::to_string(entry) + ": " + what + ". " + restore;
    }
    static std::string unknownRow(const std::string& row) {
        return "projection | " + row + ": the journal knows of no such row. " + restore;
    }
    static std::string differs(const std::string& row, const std::string& column) {
        return "projection | " + row + ": its column " + column + ". " + remake;
    }
    // Where the journal itself is damaged, nothing is to be made from it.
    static std::string differsToo(const std::string& row, const std::string& column) {
        return "projection | " + row + ": its column " + column + ". " + restore;
    }
    static std::string lostEnd() {
        return std::string("chain | the journal: the tables name entries that it does not hold. ") +
               restore;
    }
    static std::string namesNoEntry(const std::string& row) {
        return "references | " + row + ": it names a row of journal that is not there. " + restore;
    }
};

TEST_F(VerificationTest, FindsNothingInASoundBook) {
    EXPECT_EQ(findings(), "");
    const Verification result = verified();
    EXPECT_EQ(result.entries, numberFrom("SELECT count(*) FROM journal"));
    EXPECT_EQ(result.forgotten, 0);
    EXPECT_EQ(result.lastHash,
              hexOf(textFrom("SELECT hash FROM journal ORDER BY entry DESC LIMIT 1")));
}

TEST_F(VerificationTest, TellsHowFarItIs) {
    std::vector<Record> records;
    for (int i = 0; i < 2500; ++i) {
        Mix mix;
        mix.id = "many-" + std::to_string(i);
        mix.name = "n";
        records.push_back(mix);
    }
    takeSound(book(), records);
    std::size_t told = 0;
    EXPECT_TRUE(verify(book(), decodeRecord, [&](std::size_t entries) {
                    told += entries;
                }).findings.empty());
    const auto entries = static_cast<std::size_t>(journalLength(book()));
    EXPECT_EQ(entries, static_cast<std::size_t>(numberFrom("SELECT count(*) FROM journal")));
    EXPECT_LE(told, 2 * entries);
    EXPECT_GT(told + 2000, 2 * entries);
}

TEST_F(VerificationTest, FindsNothingInAnEmptyBook) {
    const BookFile empty = BookFile::create({folder().file("empty.book"), test::schemaFolder(), 0});
    const Verification result = verify(empty, decodeRecord);
    EXPECT_TRUE(result.findings.empty());
    EXPECT_EQ(result.entries, 0);
    EXPECT_EQ(result.lastHash, std::string(64, '0'));
}

TEST_F(VerificationTest, FindsNothingAfterCorrections) {
    Mix mix;
    mix.id = "m2";
    mix.name = "corrected";
    EXPECT_EQ(correctionProblems(book(), {mix}), "");
    Pull pull = *findIn<Pull>(book(), "full-pull-0");
    pull.impressions.pop_back();
    pull.spoiled.pop_back();
    EXPECT_EQ(correctionProblems(book(), {pull}), "");
    EXPECT_EQ(findings(), "");
}

TEST_F(VerificationTest, FindsAPayloadThatWasChanged) {
    EXPECT_EQ(findingsAfter("UPDATE journal SET payload = replace(payload, 'stock\",\"p', "
                            "'other\",\"p') WHERE entry = 2"),
              chain(2, "its record, mix m2, was changed after it was recorded") + "\n" +
                  differsToo("mix row 2 (mix m2)", "name says \"stock\", the journal \"other\""));
}

TEST_F(VerificationTest, FindsARowThatWasChanged) {
    close();
    const std::string whole = test::bytesOf(path());
    for (const char* change :
         {"recordedBy = 'another'", "recordedAt = '2020-01-01T00:00:00Z'", "intake = 9",
          "happenedAt = '2020'", "action = 'update'", "reason = 'because'"}) {
        EXPECT_EQ(findingsAfter(std::string("UPDATE journal SET ") + change + " WHERE entry = 2"),
                  chain(2, "it was changed after it was recorded"))
            << change;
        close();
        test::putFile(path(), whole);
    }
}

TEST_F(VerificationTest, FindsAnEntryThatWasTakenOut) {
    const std::int64_t last = numberFrom("SELECT max(entry) FROM journal");
    const std::string row = textFrom(
        "SELECT 'weather row ' || key FROM weather WHERE entry "
        "= (SELECT max(entry) - 1 FROM journal)");
    const std::string named = textFrom(
        "SELECT ' (weather ' || id || ')' FROM weather WHERE entry "
        "= (SELECT max(entry) - 1 FROM journal)");
    const std::string gone = std::to_string(last - 1);
    EXPECT_EQ(
        findingsAfter("DELETE FROM journal WHERE entry = " + gone),
        chain(static_cast<int>(last),
              "entries " + gone + " to " + gone + " are missing before it") +
            "\n" +
            chain(static_cast<int>(last), "it does not follow the entry that stands before it") +
            "\n" + lostEnd() + "\n" + namesNoEntry(row) + "\n" + unknownRow(row + named));
}

// The chain cannot tell that it was longer; the tables can.
TEST_F(VerificationTest, FindsThatTheLastEntryWasTakenOut) {
    const std::string row = textFrom("SELECT 'metering row ' || max(key) FROM metering");
    EXPECT_EQ(findingsAfter("DELETE FROM journal WHERE entry = (SELECT max(entry) FROM journal)"),
              lostEnd() + "\n" + namesNoEntry(row) + "\n" +
                  unknownRow(row + " (metering full-metering-0)"));
}

TEST_F(VerificationTest, FindsAChainThatWasJoinedAgainOverAChange) {
    JournalRow row;
    {
        JournalReader reader(database(), "WHERE entry = 2");
        ASSERT_TRUE(reader.next(row));
    }
    row.recordedBy = "another";
    EXPECT_EQ(findingsAfter("UPDATE journal SET recordedBy = 'another', hash = x'" +
                            hexOf(rowHashOf(row)) + "' WHERE entry = 2"),
              chain(3, "it does not follow the entry that stands before it"));
}

TEST_F(VerificationTest, FindsARecordThatIsNotTheOneItsEntryNames) {
    EXPECT_EQ(findingsAfter("UPDATE journal SET payload = replace(payload, '\"m2\"', '\"m3\"') "
                            "WHERE entry = 2"),
              chain(2, "its record, mix m2, was changed after it was recorded") + "\n" +
                  "projection | journal entry 2: it holds another record than the one it names. " +
                  restore + "\n" + unknownRow("mix row 2 (mix m2)"));
}

TEST_F(VerificationTest, FindsAPayloadThatIsNoRecord) {
    EXPECT_EQ(findingsAfter("UPDATE journal SET payload = '{' WHERE entry = 2"),
              chain(2, "its record, mix m2, was changed after it was recorded") +
                  "\nprojection | journal entry 2: a journal entry:1: it is not JSON: syntax error "
                  "while parsing object key - unexpected end of input; expected string literal. "
                  "Mend the file at that line. " +
                  restore + "\n" + unknownRow("mix row 2 (mix m2)"));
}

TEST_F(VerificationTest, FindsATableThatWasChanged) {
    EXPECT_EQ(findingsAfter("UPDATE mix SET name = 'other' WHERE id = 'm2'"),
              differs("mix row 2 (mix m2)", "name says \"other\", the journal \"stock\""));
    EXPECT_EQ(findingsAfter("UPDATE mix SET name = 'stock' WHERE id = 'm2'"), "");
}

TEST_F(VerificationTest, FindsANumberThatDiffersInItsLastBit) {
    EXPECT_EQ(findingsAfter("UPDATE weighing SET mass_g = 0.30000000000000004 WHERE id = 'w'"),
              differs("weighing row 1 (weighing w)",
                      "mass_g says 0.30000000000000004, the journal 0.29999999999999999"));
}

TEST_F(VerificationTest, FindsABoundOfADateThatWasChanged) {
    EXPECT_EQ(findingsAfter("UPDATE weighing SET atLatest = atLatest + 1 WHERE id = 'w'"),
              differs("weighing row 1 (weighing w)", "atLatest says \"1\", the journal \"0\""));
}

TEST_F(VerificationTest, FindsARowThatIsMissingOrTooMany) {
    EXPECT_EQ(findingsAfter("DELETE FROM weighing WHERE id = 'full-weighing-2'"),
              "projection | weighing row 6 (weighing full-weighing-2): the journal has it, the "
              "table does not. " +
                  std::string(remake));
    EXPECT_EQ(
        findingsAfter(
            "INSERT INTO weighing SELECT 6, 'x', entry, mix, act, at, atEarliest, "
            "atLatest, sequence, lot, fromMix, mass_g, massLow_g, massHigh_g, note, balance "
            "FROM weighing WHERE key = 5; INSERT INTO weighing SELECT 7, 'y', "
            "entry, mix, act, at, atEarliest, atLatest, sequence, lot, fromMix, "
            "mass_g, massLow_g, massHigh_g, note, balance FROM weighing WHERE key = 5"),
        differs("weighing row 6 (weighing x)", "id says \"x\", the journal \"full-weighing-2\"") +
            "\nprojection | weighing row 7 (weighing y): the journal knows of no such row. " +
            remake);
}

TEST_F(VerificationTest, FindsAListThatWasChanged) {
    EXPECT_EQ(findingsAfter("DELETE FROM pull_impressions WHERE pull = 3 AND position = 1"),
              "projection | pull_impressions row 3 (pull full-pull-0): the journal has it, the "
              "table does not. " +
                  std::string(remake));
}

TEST_F(VerificationTest, FindsTablesAndTriggersThatDoNotBelong) {
    EXPECT_EQ(findingsAfter("CREATE TRIGGER sly AFTER INSERT ON mix BEGIN DELETE FROM look; END; "
                            "CREATE TABLE extra (a); DROP INDEX layer_edition"),
              "tables | index layer_edition: it is missing. " + std::string(restore) +
                  "\ntables | table extra: it does not belong to a book. " + restore +
                  "\ntables | trigger sly: it does not belong to a book. " + restore);
}

TEST_F(VerificationTest, FindsATableThatIsMissing) {
    EXPECT_EQ(findingsAfter("DROP TABLE look_standsFor"),
              "tables | index look_standsFor_impression: it is missing. " + std::string(restore) +
                  "\ntables | table look_standsFor: it is missing. " + restore);
}

TEST_F(VerificationTest, FindsAFileThatIsDamaged) {
    close();
    std::string bytes = test::bytesOf(path());
    const std::size_t at = bytes.find("stock");
    ASSERT_NE(at, std::string::npos);
    const std::size_t page = at / 4096 * 4096;
    bytes[page + 3] = '\x7F';
    test::putFile(path(), bytes);
    std::string told;
    try {
        told = findings();
    } catch (const StoreError& error) {
        told = error.what();
    }
    EXPECT_NE(told.find("Keep the file as it is and restore the last backup."), std::string::npos)
        << told;
}

TEST_F(VerificationTest, CountsEntriesWhosePayloadWasTakenOut) {
    tamper(
        "DELETE FROM mix WHERE id = 'm3'; UPDATE journal SET payload = NULL, salt = x'' WHERE "
        "entry = 3");
    reopen();
    const Verification result = verified();
    EXPECT_EQ(result.forgotten, 1);
    for (const Finding& finding : result.findings)
        ADD_FAILURE() << describe(finding);
}

// Another process takes a record in while the check is half way; both states are sound.
TEST_F(VerificationTest, SeesOneStateOfABookThatIsBeingWritten) {
    const BookFile reader = BookFile::openToRead(options());
    bool taken = false;
    const Verification result = verify(reader, [&](std::string_view payload) {
        if (!taken) {
            taken = true;
            Mix mix;
            mix.id = "meanwhile";
            mix.name = "n";
            takeSound(book(), {mix});
        }
        return decodeRecord(payload);
    });
    EXPECT_TRUE(taken);
    for (const Finding& finding : result.findings)
        ADD_FAILURE() << describe(finding);
}

TEST_F(VerificationTest, MendsTablesFromTheJournal) {
    const std::string hash = verified().lastHash;
    tamper(
        "UPDATE mix SET name = 'other'; DELETE FROM weighing; DELETE FROM pull_impressions; "
        "INSERT INTO party (key, id, entry, name, contactWithheld) VALUES (99, 'x', 1, 'n', 0)");
    EXPECT_NE(findings(), "");
    rebuild(book(), decodeRecord);
    EXPECT_EQ(findings(), "");
    EXPECT_EQ(verified().lastHash, hash);
    EXPECT_EQ(countOf(book(), RecordKind::weighing), 6);
}

TEST_F(VerificationTest, MendsNothingWhereTheJournalItselfIsBroken) {
    tamper(
        "UPDATE mix SET name = 'other' WHERE id = 'm1'; UPDATE journal SET payload = '{}' WHERE "
        "entry = 2");
    reopen();
    EXPECT_EQ(test::messageOf<StoreError>([&] { rebuild(book(), decodeRecord); }),
              path() + ": its journal is damaged, so the tables are not made from it. " + restore);
    EXPECT_EQ(textFrom("SELECT name FROM mix WHERE id = 'm1'"), "other");
    EXPECT_EQ(numberFrom("SELECT count(*) FROM mix"),
              numberFrom("SELECT count(DISTINCT id) FROM journal WHERE kind = 'mix'"));
}

}  // namespace
}  // namespace rackbook
