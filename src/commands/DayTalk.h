// A day's log told in a conversation.
#pragma once

#include "commands/Command.h"

namespace rackbook {

// Asks what happened, entry by entry, keeps them in the draft, and records all of them at once in
// the end. Ctrl-C leaves out the entry that is being told, and between entries ends the
// conversation. Throws GaveUp then and at the end of the input; the draft holds what was told.
ExitCode talkOfTheDay(CommandContext& context);

}  // namespace rackbook
