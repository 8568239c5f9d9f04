#include "store/Migration.h"

#include <cstdio>

#include "base/Files.h"

namespace rackbook {

namespace {

constexpr std::size_t largestMigration = 1 << 20;

std::string fileName(int version) {
    char name[16];
    std::snprintf(name, sizeof name, "%04d.sql", version);
    return name;
}

}  // namespace

void migrate(Database& database, const std::string& schemaFolder, int target) {
    const int present = static_cast<int>(database.wholeOf("PRAGMA user_version"));
    for (int version = present + 1; version <= target; ++version) {
        const std::string path = pathOf(pathOf(schemaFolder, "sql"), fileName(version));
        const std::string sql = readFile(path, largestMigration);
        Transaction transaction(database);
        database.execute(sql);
        database.execute("PRAGMA user_version = " + std::to_string(version));
        transaction.commit();
    }
}

}  // namespace rackbook
