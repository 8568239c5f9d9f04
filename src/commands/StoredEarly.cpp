#include "commands/StoredEarly.h"

#include "base/Ranges.h"
#include "calc/Readiness.h"
#include "commands/LightOfStudio.h"
#include "store/RecordReader.h"

namespace rackbook {

void warnOfStoredEarly(Console& console, const BookFile& book,
                       const std::vector<Impression>& sheets, CivilMinute asOf) {
    std::vector<std::string> ids;
    for (const Impression& sheet : sheets)
        ids.push_back(sheet.id);
    const HouseRules rules(bookRecordOf(book).houseRules);
    const History history = judgedHistoryOfPrints(book, ids, rules);
    std::vector<int> numbers;
    // By days and looks alone: what the estimate of light adds would want all looks of the book,
    // and this comes after every move.
    for (const ReadinessRow& row : readinessOf(history, rules, asOf).rows)
        if (row.putAwayEarly && row.verdict != Verdict::ready && row.lightNow != LightState::lit)
            numbers.push_back(
                history.impressions[static_cast<std::size_t>(row.impression)].workingNumber);
    if (!numbers.empty())
        console.out() << "\nPut away too early, by the record: " << formatRanges(numbers)
                      << ". rackbook ready says why; rackbook hang brings them out.\n";
}

}  // namespace rackbook
