// What the fields of each kind of record hold, for code that fills them from text.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/RecordKind.h"

namespace rackbook {

enum class FieldForm { text, date, number, whole, yesNo, word, reference, parts };

struct KindField {
    std::string name;
    FieldForm form = FieldForm::text;
    bool isList = false;
    std::optional<RecordKind> target;  // of a reference
    std::vector<std::string> words;    // that a word may be
    std::vector<KindField> parts;      // of a list of parts
};

// In the order of the type, id included.
const std::vector<KindField>& fieldsOf(RecordKind kind);

// "netMass_g" or, inside a list of parts, "light.2.lightKind": the field, and the JSON pointer of
// it inside the record. Nothing where there is no such field, or it is a list of parts as a whole.
struct FoundField {
    const KindField* field = nullptr;
    std::string name;                 // before the first dot
    std::optional<std::size_t> part;  // from 0
    std::string partField;
};
std::optional<FoundField> fieldAt(RecordKind kind, const std::string& path);

// All paths, parts as "light.1.lightKind".
std::vector<std::string> fieldPaths(RecordKind kind);

}  // namespace rackbook
