#include "store/HistoryQuery.h"

#include "store/BookInner.h"
#include "store/HistoryLoad.h"
#include "store/HistorySql.h"

namespace rackbook {

History historyIn(const BookFile& book, const HistoryFilter& filter) {
    return loadHistory(*book.inner().database, filter, nullptr);
}

History inkHistoryIn(const BookFile& book) {
    return loadInkHistory(*book.inner().database, nullptr);
}

std::vector<ImpressionLabel> labelsOf(const BookFile& book, const History& history) {
    Statement row = book.inner().database->prepare(
        "SELECT i.id, e.code, i.workingNumber, i.designation FROM impression i JOIN edition e ON "
        "e.key = i.edition WHERE i.key = ?");
    std::vector<ImpressionLabel> labels;
    labels.reserve(history.impressions.size());
    for (const HistoryImpression& impression : history.impressions) {
        row.bind(1, impression.key);
        row.step();
        labels.push_back({row.text(0), row.text(1), static_cast<int>(row.whole(2)), row.text(3)});
        row.reset();
    }
    return labels;
}

std::vector<std::string> historyQueries() {
    std::vector<std::string> queries = inkHistoryQueries();
    for (const std::string& query :
         {std::string(placesSql), std::string(lightSql), movesSql + std::string(inOrderOfKeys),
          looksSql + std::string(inOrderOfKeys), std::string(impressionsSql) + impressionsOrder,
          std::string(pullListSql), std::string(moveListSql), std::string(lookListSql),
          std::string(standsForSql)})
        queries.push_back(query);
    return queries;
}

std::vector<std::string> inkHistoryQueries() {
    std::vector<std::string> queries;
    for (const char* query : {editionsSql, layersSql, lotsSql, mixesSql, weighingsSql, pullsSql})
        queries.push_back(query + std::string(inOrderOfKeys));
    return queries;
}

}  // namespace rackbook
