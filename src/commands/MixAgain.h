// rackbook mix-again: how to weigh an ink again.
#pragma once

#include <string>

#include "commands/BalanceToUse.h"
#include "commands/Command.h"
#include "commands/MixAgainPlan.h"

namespace rackbook {

struct MixAgainBook {
    const BookFile& book;
    const InkBook& ink;
};

// What the words of a verb ask for that has mix-again's WHAT, LAYER, --mass, --within and --on.
// Throws as massOption, wantedInkNamed and mixAgain do. Pre: --mass is given.
MixAgain mixAgainAsked(const CommandContext& context, const std::string& verb,
                       const MixAgainBook& from, const BalanceToUse& balance);

Command mixAgainCommand();

}  // namespace rackbook
