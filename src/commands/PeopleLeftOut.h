// The choice to write records without what is personal, alike for every verb that writes them.
#pragma once

#include <optional>

#include "commands/Command.h"
#include "exchange/WithoutPeople.h"

namespace rackbook {

constexpr const char* withoutPeopleName = "without-people";

// --without-people, for the descriptions of such verbs.
OptionSpec withoutPeopleOption();

// Nothing where it is not chosen. Throws UsageError beside --with-contacts.
std::optional<WithoutPeople> withoutPeopleGiven(const CommandContext& context,
                                                const RecordSet& all);

// What was left out and what could not be judged, on standard error.
void tellLeftOut(Console& console, const WithoutPeople& people);

}  // namespace rackbook
