// The share of prints whose colour is back by a dose of light, to be plotted. Private to sheets/.
#pragma once

#include "sheets/Panel.h"
#include "sheets/ReadinessFacts.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// Of all inks together: the likeliest curve, and bounds that hold it in nine cases of ten.
Panel returnCurvePanel(const LightWanted& wanted, const HouseRules& rules, const SheetWords& words);

// Two digits that count: "0.043", "1.2", "120".
std::string doseFigure(double dose_sunnyDays, const SheetWords& words);

// "21 (1.1–254)"; without a best value "1.1–254". Pre: both bounds are finite.
std::string doseText(const Estimate& dose_sunnyDays, const SheetWords& words);

}  // namespace rackbook
