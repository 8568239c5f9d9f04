#include "store/AttachmentBytes.h"

#include "base/Error.h"
#include "base/Sha256.h"
#include "store/BookInner.h"
#include "store/BytesTable.h"

namespace rackbook {

std::optional<std::string> BytesTable::find(std::string_view sha256) const {
    Statement lookup =
        m_database.prepare("SELECT bytes FROM \"attachmentBytes\" WHERE \"sha256\" = ?");
    lookup.bindText(1, sha256);
    if (!lookup.step())
        return std::nullopt;
    return std::string(lookup.view(0));
}

bool BytesTable::holdsSound(std::string_view sha256) const {
    const std::optional<std::string> bytes = find(sha256);
    return bytes && rackbook::sha256(*bytes) == sha256;
}

void BytesTable::put(std::string_view sha256, std::string_view bytes) {
    Statement statement = m_database.prepare(
        "INSERT INTO \"attachmentBytes\" (\"sha256\", \"bytes\") VALUES (?, ?) "
        "ON CONFLICT (\"sha256\") DO UPDATE SET \"bytes\" = excluded.\"bytes\"");
    statement.bindText(1, sha256);
    statement.bindBlob(2, bytes);
    statement.run();
}

void BytesTable::dropUnnamed() {
    m_database
        .prepare(
            "DELETE FROM \"attachmentBytes\" WHERE \"sha256\" NOT IN "
            "(SELECT \"sha256\" FROM \"attachment\")")
        .run();
}

void BytesTable::forEach(const std::function<void(const std::string&, bool)>& see) const {
    Statement rows = m_database.prepare(
        "SELECT \"sha256\", \"bytes\" FROM \"attachmentBytes\" ORDER BY \"sha256\"");
    while (rows.step()) {
        const std::string name = rows.text(0);
        see(name, sha256(rows.view(1)) == name);
    }
}

std::optional<std::string> attachmentBytes(const BookFile& book, const std::string& sha256) {
    std::optional<std::string> bytes = BytesTable(*book.inner().database).find(sha256);
    if (bytes && rackbook::sha256(*bytes) != sha256)
        throw StoreError(book.path(), "the bytes of the attachment " + sha256 + " are damaged",
                         "Take in or attach the same file again, or restore the last backup.");
    return bytes;
}

}  // namespace rackbook
