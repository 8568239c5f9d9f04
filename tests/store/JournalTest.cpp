#include "store/Journal.h"

#include <gtest/gtest.h>

#include "StoreBook.h"
#include "base/Sha256.h"

namespace rackbook {
namespace {

using test::correctionProblems;
using test::takeSound;

class JournalTest : public test::StoreBook {};

// A field as the description of the tables gives it: its length in bytes, ":", the bytes, ",";
// an absent one "-,".
std::string field(const Statement& row, int column) {
    if (row.isNull(column))
        return "-,";
    const std::string bytes = row.text(column);
    return std::to_string(bytes.size()) + ":" + bytes + ",";
}

// Written a second time, from the description in schema/sql/0001.sql and schema/README.md alone.
TEST_F(JournalTest, ChainsItsEntriesAsDescribed) {
    takeSound(book(), test::namedRecords());
    Mix corrected;
    corrected.id = "mix-a";
    corrected.name = "grå; 3:x,";
    EXPECT_EQ(correctionProblems(book(), {corrected}), "");
    Statement rows = database().prepare(
        "SELECT entry, intake, recordedAt, recordedBy, happenedAt, action, kind, id, earlier, "
        "reason, payloadHash, previousHash, hash, salt, payload FROM journal ORDER BY entry");
    std::string previous(32, '\0');
    std::int64_t expected = 1;
    while (rows.step()) {
        EXPECT_EQ(rows.whole(0), expected++);
        std::string hashed;
        for (int column = 0; column < 12; ++column)
            hashed += field(rows, column);
        EXPECT_EQ(rows.text(13).size(), 16u);
        EXPECT_EQ(sha256(rows.text(13) + rows.text(14)), hexOf(rows.text(10)));
        EXPECT_EQ(rows.text(11), previous);
        EXPECT_EQ(sha256(hashed), hexOf(rows.text(12)));
        previous = rows.text(12);
    }
    EXPECT_EQ(expected, static_cast<std::int64_t>(test::namedRecords().size()) + 2);
    EXPECT_EQ(verify(book(), decodeRecord).lastHash, hexOf(previous));
}

// Worked out apart from the code, with Python 3.11's hashlib, from the bytes of this row.
TEST(Journal, HashesARowToAKnownValue) {
    JournalRow row;
    row.entry = 12;
    row.intake = 3;
    row.recordedAt = "2026-03-04T08:30:00Z";
    row.recordedBy = "printer";
    row.action = "record";
    row.kind = "mix";
    row.id = "grey";
    row.salt = std::string(16, '\x01');
    row.payload = "{}";
    row.payloadHash = payloadHashOf(row.salt, *row.payload);
    row.previousHash = firstPreviousHash();
    EXPECT_EQ(hexOf(row.payloadHash),
              "d355d911d2f26a54dc0366196d99e2ffef085bb9edf7a495a342ea52c2a4c2f3");
    EXPECT_EQ(hexOf(rowHashOf(row)),
              "edfdbd031e0228a355445aaa11626f78e3992e0364b066fc3c4c0d7a49f06294");
}

TEST(Journal, TellsNeighbouringFieldsApart) {
    JournalRow one;
    one.kind = "ab";
    one.id = "c";
    JournalRow other;
    other.kind = "a";
    other.id = "bc";
    EXPECT_NE(rowHashOf(one), rowHashOf(other));
    JournalRow absent;
    JournalRow empty;
    empty.reason = "";
    EXPECT_NE(rowHashOf(absent), rowHashOf(empty));
}

TEST_F(JournalTest, SaltsEachEntryAnew) {
    takeSound(book(), test::namedRecords());
    EXPECT_EQ(numberFrom("SELECT count(DISTINCT salt) FROM journal"),
              numberFrom("SELECT count(*) FROM journal"));
}

TEST_F(JournalTest, KeepsThePayloadToTheByte) {
    const std::vector<Record> records = test::fullRecords();
    std::vector<Record> all = test::namedRecords();
    all.insert(all.end(), records.begin(), records.end());
    takeSound(book(), all);
    for (const Record& record : records)
        EXPECT_EQ(textFrom("SELECT payload FROM journal WHERE id = '" + idOf(record) + "'"),
                  encodeRecord(record));
}

TEST_F(JournalTest, ReadsBackWhatItWrote) {
    takeSound(book(), test::namedRecords());
    JournalReader reader(database(), "WHERE id = 'mix-b'");
    JournalRow row;
    ASSERT_TRUE(reader.next(row));
    EXPECT_EQ(row.kind, "mix");
    EXPECT_EQ(row.id, "mix-b");
    EXPECT_EQ(row.hash, rowHashOf(row));
    EXPECT_FALSE(row.earlier);
    EXPECT_FALSE(reader.next(row));
}

}  // namespace
}  // namespace rackbook
