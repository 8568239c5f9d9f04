#include "commands/SheetReading.h"

#include <algorithm>
#include <string_view>

#include "calc/PullsLearntFrom.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"

namespace rackbook {

namespace {

// Kinds that look at one edition at a time, where one is named.
bool asksForOneEdition(const SheetKind& kind, const SheetSubject& subject) {
    static constexpr std::string_view kinds[] = {"edition", "certificate", "ledger", "readiness"};
    return subject.edition &&
           std::find(std::begin(kinds), std::end(kinds), kind.name) != std::end(kinds);
}

}  // namespace

RecordSet recordsForSheet(const BookFile& book, const SheetKind& kind, const SheetSubject& subject,
                          CivilMinute asOf) {
    if (!asksForOneEdition(kind, subject))
        return everythingIn(book);
    AroundWanted wanted;
    wanted.editions = {subject.edition->id};
    const Book studio = bookRecordOf(book);
    // How much light is wanted is learnt from other prints.
    if (kind.depth.light && studio.latitude_deg && studio.longitude_deg) {
        std::optional<std::vector<std::string>> learntFrom =
            printsOfLatestPulls(book, pullsLearntFrom, asOf);
        if (!learntFrom)
            return everythingIn(book);
        wanted.impressions = std::move(*learntFrom);
    }
    return recordsAround(book, wanted);
}

}  // namespace rackbook
