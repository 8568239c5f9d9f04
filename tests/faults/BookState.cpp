#include "BookState.h"

#include <algorithm>
#include <filesystem>

#include "base/Error.h"
#include "exchange/RecordCodec.h"
#include "store/Sqlite.h"
#include "store/Verification.h"

namespace rackbook::faults {

bool BookState::beginsLike(const BookState& earlier) const {
    return isThere >= earlier.isThere && entries.size() >= earlier.entries.size() &&
           std::equal(earlier.entries.begin(), earlier.entries.end(), entries.begin());
}

BookState stateOfBook(const std::string& path) {
    BookState state;
    state.isThere = std::filesystem::exists(path);
    if (!state.isThere)
        return state;
    try {
        {
            const BookFile book =
                BookFile::openToRead({path, std::string(RACKBOOK_SOURCE) + "/schema", 5});
            for (const Finding& finding : verify(book, decodeRecord).findings)
                state.trouble += describe(finding) + "\n";
        }
        const Database database(path, OpenMode::read, 0);
        if (database.textOf("PRAGMA integrity_check") != "ok")
            state.trouble += "integrity_check finds something\n";
        Statement rows = database.prepare("SELECT hex(hash) FROM journal ORDER BY entry");
        while (rows.step())
            state.entries.push_back(rows.text(0));
    } catch (const Error& error) {
        state.trouble += error.what();
    }
    return state;
}

}  // namespace rackbook::faults
