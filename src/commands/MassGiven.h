// Masses as they are typed.
#pragma once

#include <optional>
#include <string>

#include "commands/Command.h"
#include "records/Lot.h"

namespace rackbook {

// What MASS may be, for the help of a verb that takes one.
extern const char* const massHelp;

struct MassTerms {
    const Lot* lot = nullptr;  // whose density turns ml into g; not owned
    bool mayBeNothing = false;
};

// In g. A number with a decimal point or a decimal comma and a unit behind it, with or without a
// space: g (also where none is given), kg, mg, oz (avoirdupois) or ml. "1,234" is 1.234: nothing
// stands between thousands. `label` names the mass in messages: "weigh: MASS". Throws UsageError
// where it is none, below or at zero, or where the density is missing for ml.
double massGiven(const std::string& text, const std::string& label, const MassTerms& terms = {});

// The same for an option, where it was given; `verb` stands in messages before it.
std::optional<double> massOption(const Arguments& arguments, const std::string& verb,
                                 const std::string& option, const MassTerms& terms = {});
std::optional<double> massOption(const CommandContext& context, const std::string& verb,
                                 const std::string& option, const MassTerms& terms = {});

}  // namespace rackbook
