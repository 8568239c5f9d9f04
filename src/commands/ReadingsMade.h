// Readings out of the samples that were chosen.
#pragma once

#include <vector>

#include "cli/CommandSpec.h"
#include "commands/ReadingTargets.h"

namespace rackbook {

// --illuminant, --observer, --condition, --backing, --geometry, --instrument and --taken-on.
std::vector<OptionSpec> conditionOptions();

// Puts what these options say where the file says nothing. Throws UsageError where the file says
// something else, and where an illuminant is given and no sample has CIELAB or XYZ. The day that a
// file was made is the last that its samples can have been measured on, so that --taken-on may name
// an earlier one.
void fillConditions(const CommandContext& context, std::vector<ChosenSample>& chosen);

// With ids: --id for a single one, else that of what was measured and a number, as
// eel-dd/reading-1. A sample that the book holds already gets the id it has there.
std::vector<Reading> readingsMade(const CommandContext& context, const BookFile& book,
                                  const std::vector<ChosenSample>& chosen);

}  // namespace rackbook
