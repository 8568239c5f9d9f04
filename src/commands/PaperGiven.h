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
    std::string warning;  // a whole sentence, where it sends back too much; else empty
};

// --paper
OptionSpec paperOption();

// What a colour was read over, or is to be printed on.
struct PaperWanted {
    std::optional<std::string> paper;  // its words
    std::optional<Backing> backing;    // that of the reading that is asked for
};

// The paper of --paper, else `otherwise`. The words of a paper are those that its reading has under
// "paper"; the id of any reading stands for what was read, so that a print may be what lies below.
// Throws UsageError naming the papers that were measured.
PaperGiven paperGiven(const CommandContext& context, const InkBook& ink,
                      const PaperWanted& otherwise);

}  // namespace rackbook
