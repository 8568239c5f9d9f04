// The balance that a verb plans for.
#pragma once

#include <optional>
#include <string>

#include "base/Tree.h"
#include "calc/BalanceReading.h"
#include "cli/CommandSpec.h"
#include "commands/Command.h"
#include "records/Balance.h"
#include "records/RecordSet.h"

namespace rackbook {

struct BalanceGiven {
    std::optional<Balance> record;
    BalanceFigures figures;
    // Where none is recorded, the repeatability is taken as large as the readability: our guess.
    bool repeatabilityAssumed = false;
};

// --balance
OptionSpec balanceOption();

// The balance that --balance names; without it, the only one that is not retired; nothing where
// there is none. Throws UsageError where there are several to choose from, or none of that name.
// Pre: the verb has balanceOption().
std::optional<BalanceGiven> balanceGiven(const Arguments& arguments, const RecordSet& records);
std::optional<BalanceGiven> balanceGiven(const CommandContext& context, const RecordSet& records);

// "Kitchen balance, in steps of 0.1 g, repeatable to 0.1 g". Pre: there is one.
std::string balanceWords(const std::optional<BalanceGiven>& balance);

// "Weighed on: …", or that none is recorded and how one is entered.
std::string balanceSentence(const std::optional<BalanceGiven>& balance);

// For reports; null where there is none.
Tree treeOf(const std::optional<BalanceGiven>& balance);

// As many decimals as it takes to write what the display shows; at most 6.
int decimalsOf(const BalanceFigures& balance);

// What the display can show, or three decimals where there is no balance.
std::string gramsShown(double mass_g, const std::optional<BalanceGiven>& balance);

}  // namespace rackbook
