#include "commands/InkBookPart.h"

#include "store/HistoryPart.h"
#include "store/HistoryQuery.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"

namespace rackbook {

InkBook inkBookWith(const BookFile& book, const std::vector<RecordKind>& kinds) {
    RecordSet records = recordsOfKinds(book, kinds);
    Book studio = records.of<Book>().front();
    HouseRules rules(studio.houseRules);
    return {std::move(studio), std::move(rules), std::move(records), inkHistoryIn(book)};
}

InkBook inkBookOfMixes(const BookFile& book, const std::vector<std::string>& mixes) {
    PartOfInk part = inkPartOf(book, {{}, mixes, {}});
    RecordSet records;
    records.add(bookRecordOf(book));
    for (const std::string& id : part.mixes)
        records.add(*findIn<Mix>(book, id));
    Book studio = records.of<Book>().front();
    HouseRules rules(studio.houseRules);
    return {std::move(studio), std::move(rules), std::move(records), std::move(part.history)};
}

}  // namespace rackbook
