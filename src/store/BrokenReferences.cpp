#include "store/BrokenReferences.h"

#include <set>
#include <tuple>

#include "store/Columns.h"

namespace rackbook {

namespace {

// The column of a table that its foreign key of that number begins with.
std::string columnOf(const Database& database, const std::string& table, std::int64_t foreignKey) {
    Statement keys = database.prepare("PRAGMA foreign_key_list(" + quoted(table) + ")");
    while (keys.step())
        if (keys.whole(0) == foreignKey)
            return keys.text(3);
    return {};
}

// Lists have no row numbers, so the keys that lead nowhere are asked for by their column.
void addKeys(const Database& database, const std::string& table, const std::string& wantedTable,
             const std::string& column, std::vector<BrokenReference>& broken) {
    Statement keys = database.prepare(
        "SELECT DISTINCT " + quoted(column) + " FROM " + quoted(table) + " AS naming WHERE " +
        quoted(column) + " IS NOT NULL AND NOT EXISTS (SELECT 1 FROM " + quoted(wantedTable) +
        " AS wanted WHERE wanted.key = naming." + quoted(column) + ")");
    while (keys.step())
        broken.push_back({table, wantedTable, keys.whole(0)});
}

}  // namespace

std::vector<BrokenReference> brokenReferencesIn(const Database& database) {
    std::set<std::tuple<std::string, std::string, std::int64_t>> found;
    Statement rows = database.prepare("PRAGMA foreign_key_check");
    while (rows.step())
        found.emplace(rows.text(0), rows.text(2), rows.whole(3));
    std::vector<BrokenReference> broken;
    for (const auto& [table, wantedTable, foreignKey] : found)
        addKeys(database, table, wantedTable, columnOf(database, table, foreignKey), broken);
    return broken;
}

}  // namespace rackbook
