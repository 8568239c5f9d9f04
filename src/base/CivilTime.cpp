#include "base/CivilTime.h"

#include <cstdio>

namespace rackbook {

namespace {

std::int64_t floorDivide(std::int64_t a, std::int64_t b) {
    return a / b - ((a % b != 0 && (a % b < 0) != (b < 0)) ? 1 : 0);
}

bool isLeap(std::int64_t year) {
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

}  // namespace

// The year is counted from 1 March, so that the leap day is its last; 400 years are 146,097 days.
std::int64_t daysFromCivil(const CivilDate& date) {
    const std::int64_t year = date.year - (date.month <= 2 ? 1 : 0);
    const std::int64_t era = floorDivide(year, 400);
    const std::int64_t yearOfEra = year - era * 400;
    const std::int64_t monthFromMarch = (date.month + 9) % 12;
    const std::int64_t dayOfYear = (153 * monthFromMarch + 2) / 5 + date.day - 1;
    const std::int64_t dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
    return era * 146097 + dayOfEra - 719468;
}

CivilDate civilFromDays(std::int64_t days) {
    const std::int64_t shifted = days + 719468;
    const std::int64_t era = floorDivide(shifted, 146097);
    const std::int64_t dayOfEra = shifted - era * 146097;
    const std::int64_t yearOfEra =
        (dayOfEra - dayOfEra / 1460 + dayOfEra / 36524 - dayOfEra / 146096) / 365;
    const std::int64_t dayOfYear = dayOfEra - (365 * yearOfEra + yearOfEra / 4 - yearOfEra / 100);
    const std::int64_t monthFromMarch = (5 * dayOfYear + 2) / 153;
    CivilDate date;
    date.day = static_cast<int>(dayOfYear - (153 * monthFromMarch + 2) / 5 + 1);
    date.month = static_cast<int>(monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9);
    date.year = yearOfEra + era * 400 + (date.month <= 2 ? 1 : 0);
    return date;
}

int daysInMonth(std::int64_t year, int month) {
    static constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && isLeap(year) ? 29 : days[month - 1];
}

std::int64_t dayOf(CivilMinute minute) {
    return floorDivide(minute, minutesPerDay);
}

std::string formatDay(CivilMinute minute) {
    const CivilDate date = civilFromDays(dayOf(minute));
    char text[40];
    std::snprintf(text, sizeof text, "%s%04lld-%02d-%02d", date.year < 0 ? "-" : "",
                  static_cast<long long>(date.year < 0 ? -date.year : date.year), date.month,
                  date.day);
    return text;
}

std::string formatMinute(CivilMinute minute) {
    const CivilMinute inDay = minute - dayOf(minute) * minutesPerDay;
    char text[16];
    std::snprintf(text, sizeof text, "T%02d:%02d", static_cast<int>(inDay / 60),
                  static_cast<int>(inDay % 60));
    return formatDay(minute) + text;
}

}  // namespace rackbook
