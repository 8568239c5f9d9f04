// The film weight that a colour is computed at, and how well it is known.
#pragma once

#include <optional>
#include <string>

#include "cli/CommandSpec.h"
#include "commands/Command.h"
#include "commands/InkBook.h"

namespace rackbook {

struct FilmGiven {
    double least_gm2 = 0;  // equal where it is fixed
    double greatest_gm2 = 0;
    double uncertainty_share = 0;  // standard uncertainty, as a share of the film weight
    std::string words;             // "5.5 g/m², aimed at, known to 10 %"
};

// --film, a range where `mayRange`.
OptionSpec filmOption(bool mayRange = false);

// What --film gives: "5.5", or "4-7" where `mayRange`.
// Else `recorded_gm2`; else what the layer at that position (-1: any layer) is printed with. Throws
// UsageError where it is wrong, or where nothing is known.
FilmGiven filmGiven(const CommandContext& context, const InkBook& ink,
                    const std::optional<double>& recorded_gm2, int layer, bool mayRange = false);

}  // namespace rackbook
