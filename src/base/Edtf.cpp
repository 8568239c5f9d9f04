#include "base/Edtf.h"

#include <algorithm>

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr std::size_t longestDate = 60;

struct Span {
    CivilMinute earliest = beginningOfTime;
    CivilMinute latest = endOfTime;
};

// What one written date names, before its qualifier is applied.
struct Named {
    CivilDate first;
    CivilDate last;
    enum class Unit { year, decade, century, season, month, day, minute } unit = Unit::year;
};

[[noreturn]] void refuse(const std::string& where, std::string_view text, const std::string& why) {
    throw InputError(
        where, "\"" + excerpt(std::string(text)) + "\" is not a date: " + why,
        "Write it as 1998, 2004-06, 2004-06-23, 2004-06-23T09:30, with ? or ~ where it is "
        "uncertain, or as an interval such as 2019/.. or 2003/2005.");
}

bool allDigits(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

int twoDigits(std::string_view text) {
    return (text[0] - '0') * 10 + (text[1] - '0');
}

std::int64_t number(std::string_view digits) {
    std::int64_t value = 0;
    for (const char digit : digits)
        value = value * 10 + (digit - '0');
    return value;
}

// Reads one date without qualifier and without interval.
class DateReader {
public:
    DateReader(std::string_view whole, const std::string& where) : m_whole(whole), m_where(where) {}

    Span read(std::string_view text) {
        const char last = text.empty() ? '\0' : text.back();
        const bool qualified = last == '?' || last == '~' || last == '%';
        if (qualified)
            text.remove_suffix(1);
        const std::size_t timeAt = text.find('T');
        if (timeAt != std::string_view::npos) {
            if (qualified)
                refuse("a clock time takes no ?, ~ or %");
            return readMoment(text.substr(0, timeAt), text.substr(timeAt + 1));
        }
        const Named named = readDay(text);
        return spanOf(qualified ? widened(named) : named);
    }

private:
    [[noreturn]] void refuse(const std::string& why) const {
        rackbook::refuse(m_where, m_whole, why);
    }

    static Span spanOf(const Named& named) {
        return {daysFromCivil(named.first) * minutesPerDay,
                (daysFromCivil(named.last) + 1) * minutesPerDay - 1};
    }

    static CivilDate shiftedByMonths(CivilDate date, std::int64_t months, bool toMonthEnd) {
        const std::int64_t count = date.year * 12 + date.month - 1 + months;
        date.year = count / 12 - (count % 12 < 0 ? 1 : 0);
        date.month = static_cast<int>(count - date.year * 12) + 1;
        const int length = daysInMonth(date.year, date.month);
        date.day = toMonthEnd ? length : std::min(date.day, length);
        return date;
    }

    static Named widened(Named named) {
        std::int64_t months = 0;
        switch (named.unit) {
            case Named::Unit::year:
                months = 12;
                break;
            case Named::Unit::decade:
                months = 120;
                break;
            case Named::Unit::century:
                months = 1200;
                break;
            case Named::Unit::season:
                months = 3;
                break;
            case Named::Unit::month:
                months = 1;
                break;
            case Named::Unit::day:
                named.first = civilFromDays(daysFromCivil(named.first) - 1);
                named.last = civilFromDays(daysFromCivil(named.last) + 1);
                return named;
            case Named::Unit::minute:
                return named;
        }
        named.first = shiftedByMonths(named.first, -months, false);
        named.last = shiftedByMonths(named.last, months, true);
        return named;
    }

    Named readDay(std::string_view text) {
        if (text.empty())
            refuse("nothing is written");
        if (text[0] == 'Y')
            return wholeYears(readLongYear(text.substr(1)), 1);
        const bool beforeChrist = text[0] == '-';
        if (beforeChrist)
            text.remove_prefix(1);
        const std::string_view year = text.substr(0, 4);
        if (year.size() < 4)
            refuse("the year needs four digits");
        if (text.size() == 4 && year.find('X') != std::string_view::npos)
            return readUnspecifiedYear(year, beforeChrist);
        if (!allDigits(year))
            refuse("the year needs four digits");
        if (beforeChrist && year == "0000")
            refuse("there is no year -0000");
        const std::int64_t value = number(year) * (beforeChrist ? -1 : 1);
        text.remove_prefix(4);
        return text.empty() ? wholeYears(value, 1) : readWithinYear(value, text);
    }

    std::int64_t readLongYear(std::string_view text) {
        const bool negative = !text.empty() && text[0] == '-';
        if (negative)
            text.remove_prefix(1);
        if (!allDigits(text) || text.size() < 5 || text.size() > 9)
            refuse("a year after Y has five to nine digits");
        if (text[0] == '0')
            refuse("a year after Y does not begin with 0");
        return number(text) * (negative ? -1 : 1);
    }

    Named readUnspecifiedYear(std::string_view year, bool beforeChrist) {
        const bool decade = allDigits(year.substr(0, 3)) && year[3] == 'X';
        const bool century = allDigits(year.substr(0, 2)) && year.substr(2) == "XX";
        if (!decade && !century)
            refuse("X may stand only for the last one or two digits of a year");
        const std::int64_t span = decade ? 10 : 100;
        const std::int64_t value = number(year.substr(0, decade ? 3 : 2)) * span;
        Named named = wholeYears(beforeChrist ? -(value + span - 1) : value, span);
        named.unit = decade ? Named::Unit::decade : Named::Unit::century;
        return named;
    }

    static Named wholeYears(std::int64_t first, std::int64_t count) {
        return {{first, 1, 1}, {first + count - 1, 12, 31}, Named::Unit::year};
    }

    // `rest` begins with the hyphen after the year.
    Named readWithinYear(std::int64_t year, std::string_view rest) {
        if (rest[0] != '-' || (rest.size() != 3 && rest.size() != 6) ||
            (rest.size() == 6 && rest[3] != '-'))
            refuse(rest.find(' ') == std::string_view::npos
                       ? "month and day are two digits each, with hyphens between"
                       : "a clock time follows its day after a T, without a space");
        const std::string_view month = rest.substr(1, 2);
        const std::string_view day = rest.size() == 6 ? rest.substr(4, 2) : std::string_view{};
        if (month == "XX") {
            if (!day.empty() && day != "XX")
                refuse("a day cannot be known where its month is not");
            Named named = wholeYears(year, 1);
            named.unit = day.empty() ? Named::Unit::month : Named::Unit::day;
            return named;
        }
        if (!allDigits(month))
            refuse("the month is not a number");
        const int value = twoDigits(month);
        if (day.empty() && value >= 21 && value <= 24)
            return {{year, 1, 1}, {year + 1, 2, daysInMonth(year + 1, 2)}, Named::Unit::season};
        if (value < 1 || value > 12)
            refuse("there is no month " + std::string(month));
        if (day.empty() || day == "XX") {
            const Named::Unit unit = day.empty() ? Named::Unit::month : Named::Unit::day;
            return {{year, value, 1}, {year, value, daysInMonth(year, value)}, unit};
        }
        if (!allDigits(day))
            refuse("the day is not a number");
        if (twoDigits(day) < 1 || twoDigits(day) > daysInMonth(year, value))
            refuse("that month has no day " + std::string(day));
        const CivilDate date{year, value, twoDigits(day)};
        return {date, date, Named::Unit::day};
    }

    Span readMoment(std::string_view day, std::string_view time) {
        if (day.find('X') != std::string_view::npos)
            refuse("a clock time needs a whole date before it");
        const Named named = readDay(day);
        if (named.unit != Named::Unit::day)
            refuse("a clock time needs a whole date before it");
        readShift(time);
        const bool hourAndMinute = time.size() >= 5 && allDigits(time.substr(0, 2)) &&
                                   time[2] == ':' && allDigits(time.substr(3, 2));
        const bool seconds = time.size() == 8 && time[5] == ':' && allDigits(time.substr(6, 2));
        if (!hourAndMinute || (time.size() != 5 && !seconds))
            refuse("a clock time reads 09:30 or 09:30:00");
        const int hour = twoDigits(time.substr(0, 2));
        const int minute = twoDigits(time.substr(3, 2));
        if (hour > 23 || minute > 59 || (seconds && twoDigits(time.substr(6, 2)) > 59))
            refuse("there is no such clock time");
        const CivilMinute moment = daysFromCivil(named.first) * minutesPerDay + hour * 60 + minute;
        return {moment, moment};
    }

    // Takes Z or ±hh or ±hh:mm off the end of a clock time.
    void readShift(std::string_view& time) {
        if (!time.empty() && time.back() == 'Z') {
            time.remove_suffix(1);
            return;
        }
        const std::size_t at = time.find_first_of("+-");
        if (at == std::string_view::npos)
            return;
        const std::string_view shift = time.substr(at + 1);
        const bool hours = shift.size() == 2 && allDigits(shift);
        const bool hoursAndMinutes = shift.size() == 5 && allDigits(shift.substr(0, 2)) &&
                                     shift[2] == ':' && allDigits(shift.substr(3));
        const int minutes = hoursAndMinutes ? twoDigits(shift.substr(3)) : 0;
        if ((!hours && !hoursAndMinutes) || minutes > 59 ||
            twoDigits(shift) * 60 + minutes > 14 * 60)
            refuse("the zone shift reads Z, +01 or +01:00, at most 14 hours");
        time = time.substr(0, at);
    }

    std::string_view m_whole;
    const std::string& m_where;
};

}  // namespace

EdtfDate EdtfDate::parse(std::string_view text, const std::string& where) {
    if (text.size() > longestDate)
        refuse(where, text, "it is longer than any date");
    DateReader reader(text, where);
    EdtfDate date;
    date.m_text = std::string(text);
    const std::size_t slash = text.find('/');
    if (slash == std::string_view::npos) {
        const Span span = reader.read(text);
        date.m_earliest = span.earliest;
        date.m_latest = span.latest;
        return date;
    }
    const std::string_view from = text.substr(0, slash);
    const std::string_view to = text.substr(slash + 1);
    if (to.find('/') != std::string_view::npos)
        refuse(where, text, "an interval has one /");
    const bool openFrom = from.empty() || from == "..";
    const bool openTo = to.empty() || to == "..";
    if (openFrom && openTo)
        refuse(where, text, "an interval with neither end says nothing");
    const Span first = openFrom ? Span{} : reader.read(from);
    const Span last = openTo ? Span{} : reader.read(to);
    if (first.earliest > last.latest)
        refuse(where, text, "the interval ends before it begins");
    date.m_earliest = first.earliest;
    date.m_latest = last.latest;
    return date;
}

EdtfDate EdtfDate::ofDay(CivilMinute minute) {
    const CivilMinute start = dayOf(minute) * minutesPerDay;
    return restored(formatDay(minute), start, start + minutesPerDay - 1);
}

EdtfDate EdtfDate::ofMinute(CivilMinute minute) {
    return restored(formatMinute(minute), minute, minute);
}

EdtfDate EdtfDate::restored(std::string text, CivilMinute earliest, CivilMinute latest) {
    EdtfDate date;
    date.m_text = std::move(text);
    date.m_earliest = earliest;
    date.m_latest = latest;
    return date;
}

bool EdtfDate::isQualified() const {
    return m_text.find_first_of("?~%") != std::string::npos;
}

bool EdtfDate::isInterval() const {
    return m_text.find('/') != std::string::npos;
}

bool EdtfDate::hasTime() const {
    return m_text.find('T') != std::string::npos;
}

bool EdtfDate::isBadlyKnown() const {
    return dayOf(m_earliest) != dayOf(m_latest);
}

std::optional<int> EdtfDate::utcOffset_min() const {
    const std::size_t timeAt = m_text.find('T');
    if (timeAt == std::string::npos || isInterval())
        return std::nullopt;
    if (m_text.back() == 'Z')
        return 0;
    const std::size_t at = m_text.find_first_of("+-", timeAt);
    if (at == std::string::npos)
        return std::nullopt;
    const std::string_view shift = std::string_view(m_text).substr(at + 1);
    const int minutes =
        twoDigits(shift) * 60 + (shift.size() == 5 ? twoDigits(shift.substr(3)) : 0);
    return m_text[at] == '-' ? -minutes : minutes;
}

bool certainlyBefore(const EdtfDate& a, const EdtfDate& b) {
    return a.latest() < b.earliest();
}

}  // namespace rackbook
