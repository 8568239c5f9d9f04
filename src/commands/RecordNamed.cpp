#include "commands/RecordNamed.h"

#include "base/Text.h"

namespace rackbook {

namespace {

// Fields that a record of that kind cannot do without, as they are typed.
const char* neededFields(RecordKind kind) {
    switch (kind) {
        case RecordKind::party:
            return " name=\"...\"";
        case RecordKind::place:
            return " name=\"...\" placeKind=rack";
        case RecordKind::lot:
            return " lotKind=ink colourWords=\"...\"";
        case RecordKind::mix:
            return " name=\"...\" purpose=stock";
        case RecordKind::block:
            return " name=\"...\" edition=ID";
        case RecordKind::balance:
            return " name=\"...\" readability_g=0.1";
        default:
            return " FIELD=VALUE";
    }
}

}  // namespace

void refuseUnknownRecord(RecordKind kind, const std::string& id,
                         const std::vector<std::string>& ids) {
    const std::optional<std::string> nearest = nearestName(id, ids);
    throw UsageError("the book has no " + std::string(textOf(kind)) + " \"" + excerpt(id) + "\"",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "Enter it with rackbook enter " + nameOf(kind, excerpt(id)) +
                                   neededFields(kind) + ".");
}

void refuseKnownRecord(RecordKind kind, const std::string& id) {
    throw UsageError(nameOf(kind, id) + " is in the book already",
                     "Change it with rackbook enter " + nameOf(kind, id) +
                         " FIELD=VALUE, and --reason or --changed-on.");
}

}  // namespace rackbook
