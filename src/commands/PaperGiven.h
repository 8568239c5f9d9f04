// The paper that a colour is computed over.
#pragma once

#include <optional>
#include <string>

#include "cli/CommandSpec.h"
#include "commands/ColourModel.h"
#include "commands/Command.h"

namespace rackbook {

struct PaperGiven {
    std::string words;
    std::string reading;  // id of the reading that says how it looks
    Bands bands{};        // as measured
};

// --paper
OptionSpec paperOption();

// The paper of --paper, else `otherwise`. The words of a paper are those that its reading has under
// "paper", or the id of that reading. Throws UsageError naming the papers that were measured.
PaperGiven paperGiven(const CommandContext& context, const InkBook& ink,
                      const std::optional<std::string>& otherwise);

}  // namespace rackbook
