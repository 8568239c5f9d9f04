// What is read out of the bytes of a file against what SQLite itself reads.
#include "store/PageScan.h"

#include <gtest/gtest.h>

#include <set>

#include "StoreBook.h"

namespace rackbook {
namespace {

using test::takeSound;

const RowShape anyTwo{2, [](std::uint64_t first, std::uint64_t second) {
                          return first >= 13 && second >= 12 && first % 2 == 1;
                      }};

class PageScanTest : public testing::Test {
protected:
    std::string path() const { return m_folder.file("pages"); }
    std::set<std::pair<std::int64_t, std::string>> found(const std::string& log = {}) const {
        std::set<std::pair<std::int64_t, std::string>> rows;
        scanRows(withLog(test::bytesOf(path()), log), anyTwo, [&](ScannedRow& row) {
            rows.emplace(row.rowid, std::get<std::string>(row.values[0]) + "|" +
                                        std::get<std::string>(row.values[1]));
        });
        return rows;
    }
    const test::TempFolder m_folder;
};

TEST_F(PageScanTest, ReadsRowsOfEverySize) {
    std::set<std::pair<std::int64_t, std::string>> wanted;
    {
        Database database(path(), OpenMode::create, 0);
        database.execute("CREATE TABLE t (a TEXT, b BLOB)");
        Statement insert = database.prepare("INSERT INTO t VALUES (?, ?)");
        std::int64_t rowid = 0;
        // About the sizes at which a row goes on in other pages, and pages in others.
        for (const std::size_t size :
             {0u,    1u,    100u,  4000u, 4045u, 4050u, 4052u, 4053u, 4054u,  4055u,  4056u,
              4060u, 4061u, 4062u, 8000u, 8139u, 8140u, 8141u, 8150u, 20000u, 100000u}) {
            const std::string bytes(size, static_cast<char>('a' + rowid % 26));
            const std::string name = "row" + std::to_string(rowid);
            insert.bindText(1, name);
            insert.bindBlob(2, bytes);
            insert.run();
            wanted.emplace(++rowid, name + "|" + bytes);
        }
    }
    const auto rows = found();
    for (const auto& row : wanted)
        EXPECT_EQ(rows.count(row), 1u) << row.first << " of " << row.second.size() << " bytes";
}

TEST_F(PageScanTest, ReadsWhatWasCommittedInTheLogAndNoMore) {
    Database database(path(), OpenMode::create, 0);
    database.execute("PRAGMA journal_mode = WAL");
    database.execute("PRAGMA cache_size = 2");
    database.execute("CREATE TABLE t (a TEXT, b BLOB)");
    database.execute("INSERT INTO t VALUES ('kept', 'one')");
    // More than the cache holds: it is in the log before anything is committed.
    database.execute("BEGIN");
    for (int i = 0; i < 40; ++i)
        database.execute("INSERT INTO t VALUES ('pending', randomblob(3000))");
    const std::string log = test::bytesOf(path() + "-wal");
    ASSERT_GT(log.size(), 60000u);
    const auto rows = found(log);
    EXPECT_EQ(rows.count({1, "kept|one"}), 1u);
    for (const auto& row : rows)
        EXPECT_NE(row.second.rfind("pending", 0), 0u);
    database.execute("COMMIT");
    EXPECT_GE(found(test::bytesOf(path() + "-wal")).size(), 41u);
}

TEST_F(PageScanTest, SaysWhatIsCutOrDamaged) {
    {
        Database database(path(), OpenMode::create, 0);
        database.execute("CREATE TABLE t (a TEXT, b BLOB)");
        database.execute("INSERT INTO t VALUES ('long', zeroblob(20000))");
    }
    const std::string whole = test::bytesOf(path());
    EXPECT_FALSE(withLog(whole, {}).isCut);
    EXPECT_TRUE(withLog(whole.substr(0, whole.size() - 4096), {}).isCut);
    EXPECT_TRUE(withLog(whole, std::string(5000, 'x')).isLogDamaged);
    EXPECT_TRUE(isInOrder(withLog(whole, {})));
    EXPECT_FALSE(isInOrder(withLog(whole.substr(0, whole.size() - 4096), {})));
    EXPECT_FALSE(isInOrder(withLog(std::string(8192, 'x'), {})));
    EXPECT_FALSE(isInOrder(withLog({}, {})));
}

}  // namespace
}  // namespace rackbook
