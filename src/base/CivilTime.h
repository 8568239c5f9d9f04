// The studio's wall clock: minutes since 1970-01-01T00:00 in the proleptic Gregorian calendar,
// with no time zone. Zones matter only where light is computed.
#pragma once

#include <cstdint>
#include <string>

namespace rackbook {

using CivilMinute = std::int64_t;

constexpr CivilMinute minutesPerDay = 24 * 60;
// Stand for open starts and ends; far outside any year that can be written.
constexpr CivilMinute beginningOfTime = INT64_MIN / 4;
constexpr CivilMinute endOfTime = INT64_MAX / 4;

struct CivilDate {
    std::int64_t year = 1970;  // astronomical numbering, year 0 exists
    int month = 1;             // 1–12
    int day = 1;               // 1–31
};

// Days since 1970-01-01. Pre: month 1–12.
std::int64_t daysFromCivil(const CivilDate& date);
CivilDate civilFromDays(std::int64_t days);
int daysInMonth(std::int64_t year, int month);

// Floor division: the day a minute falls in.
std::int64_t dayOf(CivilMinute minute);

// "2026-03-04" and "2026-03-04T09:30"
std::string formatDay(CivilMinute minute);
std::string formatMinute(CivilMinute minute);

}  // namespace rackbook
