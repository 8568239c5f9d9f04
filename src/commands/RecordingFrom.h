// Recording what was made of something else than the words of the command line.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "commands/Recording.h"

namespace rackbook {

// recordMade() for records that came from `source`, a file, which messages then name.
ExitCode recordMadeFrom(const std::string& source, CommandContext& context, BookFile& book,
                        const std::vector<MadeRecord>& made,
                        const std::optional<std::string>& reason = std::nullopt);

}  // namespace rackbook
