// The record that KIND and ID of a command line mean.
#pragma once

#include <string>

#include "commands/Command.h"
#include "records/RecordKind.h"

namespace rackbook {

struct KindAndId {
    RecordKind kind = RecordKind::edition;
    std::string id;  // as it was given; of an edition perhaps its code, of an impression CODE:7
};

// Without ID it is an edition or one of its sheets: those have names of their own. Throws
// UsageError where KIND is one and ID is missing, or is none. Pre: KIND is given.
KindAndId kindAndIdGiven(const CommandContext& context);

}  // namespace rackbook
