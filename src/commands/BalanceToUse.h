// What a plan for weighing is made for: a balance of the book, or one described by its display.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/BalanceReading.h"
#include "cli/CommandSpec.h"
#include "commands/Command.h"
#include "commands/InkBook.h"

namespace rackbook {

struct BalanceToUse {
    BalanceFigures figures;
    std::string words;
    std::string name;                   // empty where it is not recorded
    bool repeatabilityAssumed = false;  // as large as a step: our guess
    std::optional<double> capacity_g;
};

// --balance, --readability, --repeatability and --within.
std::vector<OptionSpec> balanceToUseOptions();

// The figures of --readability and --repeatability, else of a balance of the book; `verb` stands in
// messages. Throws UsageError where both are given, or neither and the book has none.
BalanceToUse balanceToUse(const Arguments& arguments, const std::string& verb, const InkBook& ink);
BalanceToUse balanceToUse(const CommandContext& context, const std::string& verb,
                          const InkBook& ink);

// --within, else the house rule colourMostUncertainty: above 0, below 1. Throws UsageError.
double colourLimitGiven(const Arguments& arguments, const HouseRules& rules);
double colourLimitGiven(const CommandContext& context, const HouseRules& rules);

}  // namespace rackbook
