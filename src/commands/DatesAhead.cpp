#include "commands/DatesAhead.h"

#include "base/Text.h"
#include "commands/AnswerLimits.h"
#include "commands/BookAccess.h"
#include "store/RecordReader.h"

namespace rackbook {

void warnOfDatesAhead(CommandContext& context, const BookFile& book,
                      const std::vector<MadeRecord>& made) {
    if (countOf(book, RecordKind::book) == 0)
        return;
    const CivilMinute now = nowAt(bookRecordOf(book)).latest();
    for (const MadeRecord& one : made) {
        const std::optional<EdtfDate> at = happenedAt(one.record);
        const std::optional<std::string> ahead =
            at && !one.strikes && !one.changedOn ? aheadWords(*at, now) : std::nullopt;
        if (!ahead)
            continue;
        context.console.err() << "rackbook: warning: "
                              << printable(nameOf(kindOf(one.record), idOf(one.record))) << ": "
                              << at->text() << " is " << *ahead
                              << ", and this is told as done. Where that is a slip, take it back "
                                 "with rackbook undo.\n";
    }
}

}  // namespace rackbook
