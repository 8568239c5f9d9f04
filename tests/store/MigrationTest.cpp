#include "store/Migration.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "StoreBook.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;
using test::takeSound;

class MigrationTest : public test::StoreBook {
protected:
    MigrationTest() {
        std::filesystem::create_directories(m_schema.file("sql"));
        std::filesystem::copy(test::schemaFolder() + "/sql/0001.sql",
                              m_schema.file("sql/0001.sql"));
    }
    // The step from version 1 to version 2 of a schema of the test's own.
    void writeStep(const std::string& sql) { test::putFile(stepPath(), sql); }
    std::string stepPath() const { return m_schema.file("sql/0002.sql"); }
    const std::string& schema() const { return m_schema.path(); }

private:
    test::TempFolder m_schema;
};

TEST_F(MigrationTest, BringsABookToTheNextVersionWithItsRecords) {
    takeSound(book(), test::namedRecords());
    writeStep(
        "ALTER TABLE mix ADD COLUMN colour TEXT;\n"
        "UPDATE mix SET colour = 'grey' WHERE id = 'mix-a';\n");
    migrate(database(), schema(), 2);
    EXPECT_EQ(numberFrom("PRAGMA user_version"), 2);
    EXPECT_EQ(textFrom("SELECT colour FROM mix WHERE id = 'mix-a'"), "grey");
    EXPECT_EQ(numberFrom("SELECT count(*) FROM mix"), 2);
}

TEST_F(MigrationTest, RunsEachStepOnce) {
    writeStep("CREATE TABLE added (a INTEGER);");
    migrate(database(), schema(), 2);
    migrate(database(), schema(), 2);
    migrate(database(), schema(), 1);
    EXPECT_EQ(numberFrom("PRAGMA user_version"), 2);
}

TEST_F(MigrationTest, RunsEveryStepFromAnEmptyFile) {
    writeStep("CREATE TABLE added (a INTEGER);");
    Database fresh(folder().file("fresh"), OpenMode::create, 0);
    migrate(fresh, schema(), 2);
    EXPECT_EQ(fresh.wholeOf("PRAGMA user_version"), 2);
    EXPECT_EQ(fresh.wholeOf("SELECT count(*) FROM added"), 0);
    EXPECT_EQ(fresh.wholeOf("SELECT count(*) FROM journal"), 0);
}

TEST_F(MigrationTest, LeavesTheBookAsItWasWhereAStepFails) {
    takeSound(book(), test::namedRecords());
    writeStep("CREATE TABLE added (a INTEGER);\nDELETE FROM look_impressions;\nNONSENSE;\n");
    EXPECT_EQ(messageOf<StoreError>([&] { migrate(database(), schema(), 2); }),
              path() + ": near \"NONSENSE\": syntax error. The book is unchanged.");
    EXPECT_EQ(numberFrom("PRAGMA user_version"), 1);
    EXPECT_EQ(numberFrom("SELECT count(*) FROM sqlite_schema WHERE name = 'added'"), 0);
    EXPECT_EQ(numberFrom("SELECT count(*) FROM look_impressions"), 2);
}

TEST_F(MigrationTest, NamesAStepThatIsMissing) {
    book();
    EXPECT_EQ(messageOf<InputError>([&] { migrate(database(), schema(), 2); }),
              stepPath() +
                  ": it cannot be read: No such file or directory. Check the name and the "
                  "permissions.");
    EXPECT_EQ(numberFrom("PRAGMA user_version"), 1);
}

}  // namespace
}  // namespace rackbook
