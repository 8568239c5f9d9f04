// Words found in the texts of the records: titles, names, colours, notes, ids.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "records/RecordKind.h"
#include "store/BookFile.h"

namespace rackbook {

// A field of a record in which every word of the question begins some word.
struct FoundText {
    RecordKind kind = RecordKind::book;
    std::string id;
    std::string field;  // "note", "colourWords"
    std::string text;   // all of it
};

struct TextSearch {
    // The nearest first (SQLite's bm25 among the texts that have the words), at most `most`.
    std::vector<FoundText> found;
    std::size_t count = 0;  // of all that was found
    // Where nothing was found: for each word of the question that no text has, the nearest that one
    // has, or nothing.
    std::vector<std::pair<std::string, std::optional<std::string>>> unknown;
};

// Case, accents and the forms of letters make no difference (the tokenizer unicode61 of FTS5).
// Private contacts are never looked at. The words are gathered anew each time, in memory. Throws
// UsageError where the question has no letter or digit, StoreError.
TextSearch searchTexts(const BookFile& book, const std::string& question, std::size_t most);

}  // namespace rackbook
