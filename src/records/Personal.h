// Which fields of records are about living people.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "records/EnumText.h"
#include "records/RecordKind.h"

namespace rackbook {

// direct: names someone, says how to reach them, or where they are. linked: says something about
// someone whom another record names. mayHold: free text, or a file, that may speak of anybody.
enum class Personal { none, direct, linked, mayHold };
template <>
struct EnumText<Personal> {
    static constexpr const char* names[] = {"none", "direct", "linked", "mayHold"};
};

// `path` is the field's, "note" or "light.note" for one in a part. Nothing where nobody has decided
// about a field of that name. The schemas say the same in x-personal, where it is not none.
std::optional<Personal> personalMark(RecordKind kind, std::string_view path);

}  // namespace rackbook
