#include "store/Keys.h"

#include "store/Columns.h"

namespace rackbook {

namespace {

std::string table(RecordKind kind) {
    return quoted(textOf(kind));
}

}  // namespace

Keys::Shelf& Keys::shelf(RecordKind kind) {
    Shelf& shelf = m_shelves[static_cast<std::size_t>(kind)];
    if (!shelf.ready) {
        // A key is never given again, even when its record was struck out.
        shelf.next = m_database.wholeOf("SELECT seq FROM sqlite_sequence WHERE name = '" +
                                        std::string(textOf(kind)) + "'") +
                     1;
        shelf.wasEmpty = shelf.next == 1;
        shelf.lookup = m_database.prepare("SELECT key FROM " + table(kind) + " WHERE id = ?");
        shelf.ready = true;
    }
    return shelf;
}

std::optional<std::int64_t> Keys::find(RecordKind kind, const std::string& id) {
    Shelf& records = shelf(kind);
    const auto known = records.known.find(id);
    if (known != records.known.end())
        return known->second;
    if (records.wasEmpty)
        return std::nullopt;
    records.lookup.bindText(1, id);
    std::optional<std::int64_t> key;
    if (records.lookup.step())
        key = records.lookup.whole(0);
    records.lookup.reset();
    if (key)
        records.known.emplace(id, *key);
    return key;
}

std::int64_t Keys::assign(RecordKind kind, const std::string& id) {
    Shelf& records = shelf(kind);
    records.known.emplace(id, records.next);
    return records.next++;
}

void Keys::forget(RecordKind kind, const std::string& id) {
    shelf(kind).known.erase(id);
}

void Keys::expect(RecordKind kind, std::size_t count) {
    Shelf& records = shelf(kind);
    records.known.reserve(records.known.size() + count);
}

void Ids::load(RecordKind kind) {
    Shelf& shelf = m_shelves[static_cast<std::size_t>(kind)];
    Statement all = m_database.prepare("SELECT key, id FROM " + table(kind));
    while (all.step())
        shelf.known.emplace(all.whole(0), all.text(1));
}

const std::string& Ids::id(RecordKind kind, std::int64_t key) {
    Shelf& shelf = m_shelves[static_cast<std::size_t>(kind)];
    const auto known = shelf.known.find(key);
    if (known != shelf.known.end())
        return known->second;
    if (!shelf.ready) {
        shelf.lookup = m_database.prepare("SELECT id FROM " + table(kind) + " WHERE key = ?");
        shelf.ready = true;
    }
    shelf.lookup.bind(1, key);
    std::string id = shelf.lookup.step() ? shelf.lookup.text(0) : std::string();
    shelf.lookup.reset();
    return shelf.known.emplace(key, std::move(id)).first->second;
}

}  // namespace rackbook
