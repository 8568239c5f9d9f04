// Shares of an ink as tables of layers print them.
#pragma once

#include <string>

#include "calc/Estimate.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// In per cent without the sign: "12.5", "12.5 (10.0–15.0)", "10.0–15.0"; "not recorded" where it
// may be anything.
std::string shareText(const Estimate& share, int decimals, const SheetWords& words);

// The same of extender, or as it is remembered. Asks for the labels layers.remembered and
// layers.rememberedNone.
std::string extenderText(const Estimate& share, bool isRemembered, const SheetWords& words);

// Whether the texts of the two show a range, or what is remembered.
bool showsEstimates(const Estimate& extenderShare, bool isRemembered, const Estimate& drierShare);

}  // namespace rackbook
