#include "commands/InkBookPart.h"

#include "store/HistoryQuery.h"
#include "store/RecordsAround.h"

namespace rackbook {

InkBook inkBookWith(const BookFile& book, const std::vector<RecordKind>& kinds) {
    RecordSet records = recordsOfKinds(book, kinds);
    Book studio = records.of<Book>().front();
    HouseRules rules(studio.houseRules);
    return {std::move(studio), std::move(rules), std::move(records), inkHistoryIn(book)};
}

void addPullsBefore(InkBook& ink, const BookFile& book, CivilMinute asOf) {
    for (Pull& pull : pullsSince(book, asOf - minutesPerDay))
        ink.records.add(std::move(pull));
}

}  // namespace rackbook
