#include "store/Migration.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "StoreBook.h"
#include "store/RecordReader.h"
#include "store/Verification.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;
using test::takeSound;

constexpr int nextVersion = bookVersion + 1;

class MigrationTest : public test::StoreBook {
protected:
    MigrationTest() { std::filesystem::copy(test::schemaFolder() + "/sql", m_schema.file("sql")); }
    // The step to the next version, of a schema of the test's own.
    void writeStep(const std::string& sql) { test::putFile(stepPath(), sql); }
    std::string stepPath() const {
        return m_schema.file("sql/000" + std::to_string(nextVersion) + ".sql");
    }
    const std::string& schema() const { return m_schema.path(); }

private:
    test::TempFolder m_schema;
};

TEST_F(MigrationTest, BringsABookToTheNextVersionWithItsRecords) {
    takeSound(book(), test::namedRecords());
    writeStep(
        "ALTER TABLE mix ADD COLUMN colour TEXT;\n"
        "UPDATE mix SET colour = 'grey' WHERE id = 'mix-a';\n");
    migrate(database(), schema(), nextVersion);
    EXPECT_EQ(numberFrom("PRAGMA user_version"), nextVersion);
    EXPECT_EQ(textFrom("SELECT colour FROM mix WHERE id = 'mix-a'"), "grey");
    EXPECT_EQ(numberFrom("SELECT count(*) FROM mix"), 2);
}

TEST_F(MigrationTest, RunsEachStepOnce) {
    writeStep("CREATE TABLE added (a INTEGER);");
    migrate(database(), schema(), nextVersion);
    migrate(database(), schema(), nextVersion);
    migrate(database(), schema(), bookVersion);
    EXPECT_EQ(numberFrom("PRAGMA user_version"), nextVersion);
}

TEST_F(MigrationTest, RunsEveryStepFromAnEmptyFile) {
    writeStep("CREATE TABLE added (a INTEGER);");
    Database fresh(folder().file("fresh"), OpenMode::create, 0);
    migrate(fresh, schema(), nextVersion);
    EXPECT_EQ(fresh.wholeOf("PRAGMA user_version"), nextVersion);
    EXPECT_EQ(fresh.wholeOf("SELECT count(*) FROM added"), 0);
    EXPECT_EQ(fresh.wholeOf("SELECT count(*) FROM journal"), 0);
}

TEST_F(MigrationTest, LeavesTheBookAsItWasWhereAStepFails) {
    takeSound(book(), test::namedRecords());
    writeStep("CREATE TABLE added (a INTEGER);\nDELETE FROM look_impressions;\nNONSENSE;\n");
    EXPECT_EQ(messageOf<StoreError>([&] { migrate(database(), schema(), nextVersion); }),
              path() + ": near \"NONSENSE\": syntax error. The book is unchanged.");
    EXPECT_EQ(numberFrom("PRAGMA user_version"), bookVersion);
    EXPECT_EQ(numberFrom("SELECT count(*) FROM sqlite_schema WHERE name = 'added'"), 0);
    EXPECT_EQ(numberFrom("SELECT count(*) FROM look_impressions"), 2);
}

TEST_F(MigrationTest, NamesAStepThatIsMissing) {
    book();
    EXPECT_EQ(messageOf<InputError>([&] { migrate(database(), schema(), nextVersion); }),
              stepPath() +
                  ": it cannot be read: No such file or directory. Check the name and the "
                  "permissions.");
    EXPECT_EQ(numberFrom("PRAGMA user_version"), bookVersion);
}

// A book as each earlier version left it.
class EarlierBook : public test::StoreBook, public testing::WithParamInterface<int> {
protected:
    void SetUp() override {
        const std::string version = std::to_string(GetParam());
        Database made(path(), OpenMode::create, 0);
        migrate(made, test::schemaFolder(), GetParam());
        made.execute(
            test::bytesOf(test::sourcePath("tests/store/books/version-" + version + ".sql")));
    }
    std::string verified(const BookFile& opened) {
        std::string told;
        for (const Finding& finding : verify(opened, decodeRecord).findings)
            told += describe(finding) + "\n";
        return told;
    }
};

TEST_P(EarlierBook, IsReadAsItIsAndStaysSo) {
    const std::string before = test::bytesOf(path());
    {
        const BookFile opened = BookFile::openToRead(options());
        EXPECT_EQ(verified(opened), "");
        EXPECT_EQ(allOf<Lot>(opened).size(), 2u);
        EXPECT_EQ(allOf<Weighing>(opened).size(), 2u);
        EXPECT_EQ(allOf<Balance>(opened).size(), GetParam() < 2 ? 0u : 1u);
        EXPECT_EQ(allOf<Weather>(opened).size(), GetParam() < 3 ? 0u : 1u);
        EXPECT_EQ(allOf<Issue>(opened).size(), GetParam() < 3 ? 0u : 1u);
    }
    EXPECT_EQ(test::bytesOf(path()), before);
}

TEST_P(EarlierBook, IsBroughtUpByTheFirstWriter) {
    BookFile opened = BookFile::openToWrite(options());
    EXPECT_EQ(opened.inner().database->wholeOf("PRAGMA user_version"), bookVersion);
    Balance balance;
    balance.id = "kitchen";
    balance.name = "Kitchen balance";
    balance.readability_g = 0.1;
    Place wall;
    wall.id = "wall";
    wall.name = "Wall";
    wall.light.emplace_back();
    wall.light.back().lightKind = LightKind::daylight;
    wall.light.back().glass = Glass::laminated;
    wall.light.back().glassUltravioletTransmittance = 0.02;
    Metering metering;
    metering.id = "noon";
    metering.place = {"wall"};
    metering.from = EdtfDate::parse("2026-03-18T12:00");
    metering.to = EdtfDate::parse("2026-03-18T13:00");
    metering.exposure_lxh = 800;
    Issue issue;
    issue.id = "handed-out";
    issue.sheetKind = "edition";
    issue.issuedOn = EdtfDate::parse("2026-03-19");
    issue.asOf = EdtfDate::parse("2026-03-18");
    issue.language = "da";
    issue.place = Ref<Place>{"wall"};
    issue.namesHolders = true;
    takeSound(opened, {balance, wall, metering, issue});
    EXPECT_EQ(verified(opened), "");
    EXPECT_EQ(allOf<Weighing>(opened).size(), 2u);
    EXPECT_EQ(findIn<Balance>(opened, "kitchen")->readability_g, 0.1);
    EXPECT_TRUE(sameFacts(*findIn<Place>(opened, "wall"), wall));
    EXPECT_TRUE(sameFacts(*findIn<Metering>(opened, "noon"), metering));
    EXPECT_TRUE(sameFacts(*findIn<Issue>(opened, "handed-out"), issue));
}

// A book as that version left it, opened to read.
class BookOfVersion {
public:
    explicit BookOfVersion(int version) {
        const std::string rows =
            test::sourcePath("tests/store/books/version-" + std::to_string(version) + ".sql");
        BookOptions options;
        options.path = m_folder.file("earlier");
        options.schemaFolder = test::schemaFolder();
        {
            Database made(options.path, OpenMode::create, 0);
            migrate(made, test::schemaFolder(), version);
            made.execute(test::bytesOf(rows));
        }
        m_book.emplace(BookFile::openToRead(options));
    }
    const BookFile& opened() const { return *m_book; }

private:
    test::TempFolder m_folder;
    std::optional<BookFile> m_book;
};

// What an earlier version said of a place stands, with nothing said of the glass.
TEST(EarlierBookOfVersion2, KeepsTheLightOfItsPlaces) {
    const BookOfVersion earlier(2);
    const BookFile& opened = earlier.opened();
    const std::optional<Place> rack = findIn<Place>(opened, "rack");
    ASSERT_TRUE(rack && rack->light.size() == 2);
    EXPECT_EQ(rack->light[1].glassTransmittance, 0.8);
    EXPECT_EQ(rack->light[1].note, "the shutter came down");
    EXPECT_FALSE(rack->light[1].glass);
    EXPECT_FALSE(rack->light[1].glassUltravioletTransmittance);
    EXPECT_EQ(bookRecordOf(opened).houseRules.front().value, 10);
    EXPECT_TRUE(bookRecordOf(opened).monthlySkies.empty());
    EXPECT_EQ(allOf<StockTake>(opened).front().mass_g, 238.5);
}

// What was handed out then stands as it was, and says no more than it said.
TEST(EarlierBookOfVersion3, KeepsWhatWasHandedOut) {
    const BookOfVersion earlier(3);
    const BookFile& opened = earlier.opened();
    const std::optional<Issue> issue = findIn<Issue>(opened, "TIDE/issue-1");
    ASSERT_TRUE(issue);
    Issue wanted;
    wanted.id = "TIDE/issue-1";
    wanted.sheetKind = "edition";
    wanted.issuedOn = EdtfDate::parse("2026-02-04");
    wanted.recipient = Ref<Party>{"harbour"};
    wanted.edition = Ref<Edition>{"TIDE"};
    wanted.impressions = {{"TIDE/1"}};
    wanted.fileSha256.emplace();
    for (int i = 0; i < 32; ++i)
        *wanted.fileSha256 += "ab";
    EXPECT_TRUE(sameFacts(*issue, wanted));
    EXPECT_EQ(findIn<Move>(opened, "TIDE/move-1")->document->id, "TIDE/issue-1");
    EXPECT_EQ(findIn<Place>(opened, "rack")->light[1].glass, Glass::laminated);
    EXPECT_EQ(bookRecordOf(opened).monthlySkies.front().overcastShare, 0.25);
    EXPECT_EQ(findIn<Attachment>(opened, "TIDE/scan-1")->caption, "A scan");
    EXPECT_FALSE(findIn<Attachment>(opened, "TIDE/scan-1")->width_px);
}

// What that version learnt to say of documents and pictures stands.
TEST(EarlierBookOfVersion4, KeepsWhatItSaysOfDocumentsAndPictures) {
    const BookOfVersion earlier(4);
    const std::optional<Issue> issue = findIn<Issue>(earlier.opened(), "TIDE/issue-1");
    ASSERT_TRUE(issue);
    EXPECT_EQ(issue->language, "da");
    EXPECT_EQ(issue->asOf->text(), "2026-02-03");
    EXPECT_EQ(issue->fileName, "tide.pdf");
    EXPECT_TRUE(issue->namesHolders);
    EXPECT_EQ(findIn<Attachment>(earlier.opened(), "TIDE/scan-1")->width_px, 120);
}

TEST_P(EarlierBook, StaysAsItIsWhereSomethingIsOnlyTried) {
    const std::string before = test::bytesOf(path());
    {
        BookOptions tries = options();
        tries.onlyTries = true;
        BookFile opened = BookFile::openToWrite(tries);
        Mix mix;
        mix.id = "tried";
        mix.name = "tried";
        takeSound(opened, {mix});
    }
    EXPECT_EQ(test::bytesOf(path()), before);
}

INSTANTIATE_TEST_SUITE_P(OfVersion, EarlierBook, testing::Range(1, bookVersion));

}  // namespace
}  // namespace rackbook
