// Which of the prints that were judged a reporting verb is about, by the filters such verbs share.
#pragma once

#include <vector>

#include "calc/Readiness.h"
#include "commands/Command.h"
#include "store/BookFile.h"
#include "store/HistoryQuery.h"

namespace rackbook {

// --edition, --holder and --verdict, for the descriptions of such verbs.
std::vector<OptionSpec> printFilters();

bool hasPrintFilters(const CommandContext& context);

// By row of the readiness. Throws UsageError for an edition or a party that is not there.
std::vector<bool> printsWanted(const CommandContext& context, const BookFile& book,
                               const History& history, const std::vector<ImpressionLabel>& labels,
                               const Readiness& readiness);

}  // namespace rackbook
