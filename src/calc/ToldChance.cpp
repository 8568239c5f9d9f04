#include "calc/ToldChance.h"

#include <cmath>

namespace rackbook {

namespace {

bool isFoundTrue(const ColourLooks& looks) {
    return looks.any && looks.last == LookColour::trueColour && looks.foundTrue > 0;
}

// What is not known of places, glass and skies leaves a dose open by a factor of about 15 either
// way; a date by no factor at all, as the light may not have begun.
bool isLeftOpenByDates(const ReadinessRow& row) {
    constexpr double mostOpen_times = 100;
    const Estimate& dose = row.dose.sunnyDays;
    if (!dose.isKnown() || dose.high <= 0)
        return false;
    const bool isOpen =
        dose.best > mostOpen_times * dose.low || dose.high > mostOpen_times * dose.best;
    return row.gaps.dates || (isBadlyKnown(row.pulled) && isOpen);
}

}  // namespace

ToldChance toldChanceOf(const ReadinessRow& row) {
    if (isFoundTrue(row.looks) && !cameBackInTheDark(row))
        return ToldChance::foundTrue;
    if (isLeftOpenByDates(row))
        return ToldChance::datesTooWide;
    return std::isnan(row.returnedChance) ? ToldChance::lightNotKnown : ToldChance::told;
}

}  // namespace rackbook
