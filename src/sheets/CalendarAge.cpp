#include "sheets/CalendarAge.h"

#include <algorithm>

#include "base/CivilTime.h"

namespace rackbook {

std::int64_t wholeMonths(std::int64_t fromDay, std::int64_t toDay) {
    const CivilDate from = civilFromDays(fromDay);
    const CivilDate to = civilFromDays(toDay);
    const std::int64_t months = (to.year - from.year) * 12 + to.month - from.month;
    const bool isEndOfMonth = to.day == daysInMonth(to.year, to.month);
    return to.day >= from.day || isEndOfMonth ? months : months - 1;
}

std::int64_t wholeTenthsOfYears(std::int64_t fromDay, std::int64_t toDay) {
    constexpr std::int64_t mostDaysOfYear = 366;
    const std::int64_t years = wholeMonths(fromDay, toDay) / 12;
    CivilDate anniversary = civilFromDays(fromDay);
    anniversary.year += years;
    anniversary.day = std::min(anniversary.day, daysInMonth(anniversary.year, anniversary.month));
    return years * 10 + (toDay - daysFromCivil(anniversary)) * 10 / mostDaysOfYear;
}

}  // namespace rackbook
