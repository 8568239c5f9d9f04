#include "commands/KindAndId.h"

#include "base/Error.h"
#include "commands/BookAccess.h"

namespace rackbook {

KindAndId kindAndIdGiven(const CommandContext& context) {
    const std::string first = context.arguments.text("kind");
    if (const std::optional<std::string> id = context.arguments.value("id"))
        return {recordKindNamed(first), *id};
    if (enumFrom<RecordKind>(first))
        throw UsageError("which " + first + " is not said", "Add its id.");
    const bool isSheet = first.find(':') != std::string::npos;
    return {isSheet ? RecordKind::impression : RecordKind::edition, first};
}

}  // namespace rackbook
