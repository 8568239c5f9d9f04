// Which lots a reporting verb is about.
#pragma once

#include <cstddef>
#include <vector>

#include "commands/Command.h"
#include "commands/InkBook.h"

namespace rackbook {

// --edition, --place and --during.
std::vector<OptionSpec> lotFilters();

// Takes from `lots`, positions among the records, what the filters do not let through. Throws
// UsageError for an edition or a place that is not there.
void keepLotsWanted(const CommandContext& context, const InkBook& ink,
                    std::vector<std::size_t>& lots);

}  // namespace rackbook
