#include "exchange/WrittenTime.h"

#include "base/CivilTime.h"

namespace rackbook {

namespace {

constexpr std::int64_t millisecondsPerMinute = 60'000;
constexpr int longestShift_min = 18 * 60;

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// Takes pieces off the front of a text.
class Pieces {
public:
    explicit Pieces(std::string_view text) : m_rest(text) {}

    bool isDone() const { return m_rest.empty(); }
    char next() const { return m_rest.empty() ? '\0' : m_rest[0]; }

    bool take(char c) {
        if (next() != c || m_rest.empty())
            return false;
        m_rest.remove_prefix(1);
        return true;
    }

    // One of several characters, or nothing.
    char takeOneOf(std::string_view characters) {
        const char c = next();
        return c != '\0' && characters.find(c) != std::string_view::npos && take(c) ? c : '\0';
    }

    bool takeSpaces() {
        const bool hasSome = next() == ' ';
        while (take(' ')) {
        }
        return hasSome;
    }

    // From `least` to `most` digits.
    std::optional<int> number(int least, int most) {
        int value = 0;
        int count = 0;
        for (; count < most && isDigit(next()); ++count) {
            value = value * 10 + (next() - '0');
            m_rest.remove_prefix(1);
        }
        return count < least || isDigit(next()) ? std::nullopt : std::optional(value);
    }

    // Two digits that more digits may follow.
    std::optional<int> twoDigits() {
        if (m_rest.size() < 2 || !isDigit(m_rest[0]) || !isDigit(m_rest[1]))
            return std::nullopt;
        const int value = (m_rest[0] - '0') * 10 + (m_rest[1] - '0');
        m_rest.remove_prefix(2);
        return value;
    }

    // What decimals after a point or comma are in thousandths; those beyond are cut off.
    std::optional<int> thousandths() {
        int value = 0;
        int count = 0;
        for (; isDigit(next()); ++count) {
            value = count < 3 ? value * 10 + (next() - '0') : value;
            m_rest.remove_prefix(1);
        }
        for (int i = count; i < 3; ++i)
            value *= 10;
        return count == 0 ? std::nullopt : std::optional(value);
    }

private:
    std::string_view m_rest;
};

std::optional<std::int64_t> dayOfParts(std::optional<int> year, std::optional<int> month,
                                       std::optional<int> day) {
    if (!year || !month || !day || *year < 1 || *month < 1 || *month > 12 || *day < 1 ||
        *day > daysInMonth(*year, *month))
        return std::nullopt;
    return daysFromCivil({*year, *month, *day});
}

std::optional<std::int64_t> takeDay(Pieces& text, DateOrder order) {
    if (order == DateOrder::yearMonthDay) {
        const std::optional<int> year = text.number(4, 4);
        if (!year || !text.take('-'))
            return std::nullopt;
        const std::optional<int> month = text.number(2, 2);
        if (!month || !text.take('-'))
            return std::nullopt;
        return dayOfParts(year, month, text.number(2, 2));
    }
    const std::optional<int> first = text.number(1, 2);
    const char mark = text.takeOneOf(".-/");
    if (!first || mark == '\0')
        return std::nullopt;
    const std::optional<int> second = text.number(1, 2);
    if (!second || !text.take(mark))
        return std::nullopt;
    const std::optional<int> year = text.number(4, 4);
    const bool dayFirst = order == DateOrder::dayMonthYear;
    return dayOfParts(year, dayFirst ? second : first, dayFirst ? first : second);
}

// Hours of the half day that AM or PM behind it names; as they are where neither is there.
std::optional<int> takeHalfDay(Pieces& text, int hour) {
    Pieces ahead = text;
    ahead.takeSpaces();
    const char half = ahead.takeOneOf("AaPp");
    if (half == '\0' || ahead.takeOneOf("Mm") == '\0')
        return hour;
    text = ahead;
    if (hour < 1 || hour > 12)
        return std::nullopt;
    return hour % 12 + (half == 'P' || half == 'p' ? 12 : 0);
}

std::optional<std::int64_t> takeTimeOfDay_ms(Pieces& text) {
    const std::optional<int> written = text.number(1, 2);
    if (!written || !text.take(':'))
        return std::nullopt;
    const std::optional<int> minute = text.number(2, 2);
    std::optional<int> second = 0;
    std::optional<int> part_ms = 0;
    if (text.take(':')) {
        second = text.number(2, 2);
        if (text.takeOneOf(".,") != '\0')
            part_ms = text.thousandths();
    }
    const std::optional<int> hour = takeHalfDay(text, *written);
    if (!hour || !minute || !second || !part_ms || *hour > 23 || *minute > 59 || *second > 59)
        return std::nullopt;
    return ((*hour * 60 + *minute) * std::int64_t{60} + *second) * 1000 + *part_ms;
}

// What follows the time of day, to the end of the text; false where it is no shift.
bool takeShift(Pieces& text, std::optional<int>& shift_min) {
    text.takeSpaces();
    if (text.isDone())
        return true;
    if (text.takeOneOf("Zz") != '\0') {
        shift_min = 0;
        return text.isDone();
    }
    const char sign = text.takeOneOf("+-");
    const std::optional<int> hours = sign == '\0' ? std::nullopt : text.twoDigits();
    if (!hours)
        return false;
    const bool hasColon = text.take(':');
    const std::optional<int> minutes =
        text.isDone() && !hasColon ? std::optional(0) : text.twoDigits();
    if (!minutes || *minutes > 59 || !text.isDone())
        return false;
    const int shift = *hours * 60 + *minutes;
    shift_min = sign == '-' ? -shift : shift;
    return shift <= longestShift_min;
}

std::optional<WrittenTime> restOfTime(std::optional<std::int64_t> day, Pieces& text) {
    if (!day)
        return std::nullopt;
    const std::optional<std::int64_t> inDay_ms = takeTimeOfDay_ms(text);
    WrittenTime time;
    if (!inDay_ms || !takeShift(text, time.shift_min))
        return std::nullopt;
    time.clock_ms = *day * minutesPerDay * millisecondsPerMinute + *inDay_ms;
    return time;
}

}  // namespace

const char* exampleOf(DateOrder order) {
    switch (order) {
        case DateOrder::yearMonthDay:
            return "2026-03-04";
        case DateOrder::dayMonthYear:
            return "04.03.2026";
        case DateOrder::monthDayYear:
            break;
    }
    return "03/04/2026";
}

std::optional<WrittenTime> writtenTimeIn(std::string_view text, DateOrder order) {
    Pieces pieces(text);
    const std::optional<std::int64_t> day = takeDay(pieces, order);
    if (pieces.takeOneOf("Tt") == '\0' && !pieces.takeSpaces())
        return std::nullopt;
    return restOfTime(day, pieces);
}

std::optional<WrittenTime> writtenTimeIn(std::string_view date, std::string_view timeOfDay,
                                         DateOrder order) {
    Pieces pieces(timeOfDay);
    return restOfTime(writtenDayIn(date, order), pieces);
}

std::optional<std::int64_t> writtenDayIn(std::string_view text, DateOrder order) {
    Pieces pieces(text);
    const std::optional<std::int64_t> day = takeDay(pieces, order);
    return pieces.isDone() ? day : std::nullopt;
}

}  // namespace rackbook
