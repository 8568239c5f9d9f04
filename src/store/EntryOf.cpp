#include "store/EntryOf.h"

#include "records/EnumText.h"
#include "store/BookInner.h"
#include "store/RecordReader.h"

namespace rackbook {

std::optional<EntryNote> firstEntryOf(const BookFile& book, RecordKind kind,
                                      const std::string& id) {
    Statement lookup = book.inner().database->prepare(
        "SELECT recordedAt, recordedBy FROM journal WHERE kind = ? AND id = ? "
        "ORDER BY entry LIMIT 1");
    lookup.bindText(1, textOf(kind));
    lookup.bindText(2, id);
    if (!lookup.step())
        return std::nullopt;
    return EntryNote{lookup.text(0), lookup.text(1), wasStruck(book, kind, id)};
}

}  // namespace rackbook
