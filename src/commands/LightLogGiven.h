// How a logger's file is to be read, as options say it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cli/CommandSpec.h"
#include "commands/Command.h"
#include "exchange/LightLog.h"
#include "records/Book.h"

namespace rackbook {

// --unit, --clock, --date-order, --time, --date, --value.
std::vector<OptionSpec> lightLogOptions();

// Throws UsageError where an option's value is none, or options do not go together.
LightLogTerms lightLogTermsGiven(const CommandContext& context, const Book& studio);

// "the studio's clock (Europe/Copenhagen)", "UTC", "UTC+01:00 all year", "the shift behind each
// time".
std::string clockWords(const LogClock& clock);

}  // namespace rackbook
