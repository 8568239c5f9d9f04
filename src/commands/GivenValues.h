// Values of options and arguments, read the way the records want them.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "base/Edtf.h"
#include "commands/Command.h"
#include "records/Book.h"

namespace rackbook {

// The value of an option as a date. Throws UsageError where it is none.
EdtfDate dateFrom(const std::string& text, const std::string& option);

// A clock time, as 09:30, with the day before it that the minute lies in; other text as it is.
std::string withDay(const std::string& text, CivilMinute day);

// A date as well as it is known, where the option was given.
std::optional<EdtfDate> dateGiven(const CommandContext& context, const std::string& option);

// The same, or a clock time of today at the studio, as 09:30.
std::optional<EdtfDate> momentGiven(const CommandContext& context, const Book& studio,
                                    const std::string& option);
// A clock time alone is of the day that the minute lies in.
std::optional<EdtfDate> momentGivenOn(const CommandContext& context, CivilMinute day,
                                      const std::string& option);
// Now where the option was left out.
EdtfDate momentGivenOrNow(const CommandContext& context, const Book& studio,
                          const std::string& option);

// The day of a clock time; any other date as it is.
EdtfDate dayIn(const EdtfDate& date);

// A whole number of an option or argument; `label` names it in messages. Throws UsageError outside
// least … most.
std::optional<int> wholeGiven(const CommandContext& context, const std::string& name,
                              const std::string& label, int least, int most);

// Height and width in mm, from 300x200. Throws UsageError.
std::optional<std::pair<double, double>> sizeGiven(const CommandContext& context,
                                                   const std::string& option);

}  // namespace rackbook
