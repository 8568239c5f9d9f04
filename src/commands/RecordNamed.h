// Records that the words of a command line name by id.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "commands/Command.h"
#include "records/Record.h"
#include "store/RecordReader.h"

namespace rackbook {

// Throws UsageError naming the nearest of the ids, or how such a record is entered.
[[noreturn]] void refuseUnknownRecord(RecordKind kind, const std::string& id,
                                      const std::vector<std::string>& ids);

[[noreturn]] void refuseKnownRecord(RecordKind kind, const std::string& id);

template <class R>
R recordNamed(const BookFile& book, const std::string& id) {
    if (std::optional<R> found = findIn<R>(book, id))
        return std::move(*found);
    std::vector<std::string> ids;
    for (const R& record : allOf<R>(book))
        ids.push_back(record.id);
    refuseUnknownRecord(R::kind, id, ids);
}

// Among all records of its kind, which is its place in a history too; their number where there is
// none of that id.
template <class R>
std::size_t positionOf(const BookFile& book, const std::string& id) {
    const std::vector<R> records = allOf<R>(book);
    const auto found = std::find_if(records.begin(), records.end(),
                                    [&](const R& record) { return record.id == id; });
    return static_cast<std::size_t>(found - records.begin());
}

// Throws UsageError where the book has a record of that id already.
template <class R>
void requireNewId(const BookFile& book, const std::string& id) {
    if (findIn<R>(book, id))
        refuseKnownRecord(R::kind, id);
}

// The record that an option names; nothing where it was left out.
template <class R>
std::optional<Ref<R>> refGiven(const CommandContext& context, const BookFile& book,
                               const std::string& option) {
    const std::optional<std::string> id = context.arguments.value(option);
    return id ? std::optional(Ref<R>{recordNamed<R>(book, *id).id}) : std::nullopt;
}

}  // namespace rackbook
