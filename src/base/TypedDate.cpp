#include "base/TypedDate.h"

#include <regex>

#include "base/CivilTime.h"
#include "base/Text.h"
#include "base/Utf8.h"

namespace rackbook {

namespace {

bool isSpace(char32_t c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == 0xA0 || c == 0x202F ||
           c == 0x3000;
}

std::string replaced(std::string text, const std::string& part, const std::string& by) {
    for (std::size_t at = text.find(part); at != std::string::npos;
         at = text.find(part, at + by.size()))
        text.replace(at, part.size(), by);
    return text;
}

std::string twoDigits(int value) {
    return (value < 10 ? "0" : "") + std::to_string(value);
}

std::optional<std::string> dayOf(const std::string& year, const std::string& month,
                                 const std::string& day) {
    if (year.size() != 4 || month.size() > 2 || day.size() > 2)
        return std::nullopt;
    const int m = std::stoi(month);
    const int d = std::stoi(day);
    if (m < 1 || m > 12 || d < 1 || d > daysInMonth(std::stoi(year), m))
        return std::nullopt;
    return formatDay(daysFromCivil({std::stoi(year), m, d}) * minutesPerDay);
}

}  // namespace

std::string plainlyTyped(const std::string& text) {
    std::u32string points = codePoints(text);
    for (char32_t& c : points) {
        constexpr char32_t firstWide = 0xFF01;
        constexpr char32_t lastWide = 0xFF5E;
        if (c >= firstWide && c <= lastWide)
            c = c - firstWide + '!';
        else if (isSpace(c))
            c = ' ';
    }
    std::string plain;
    for (const char32_t c : points)
        appendUtf8(plain, c);
    return trimmed(plain);
}

std::optional<std::string> typedDay(const std::string& text, DateOrder order) {
    static const std::regex form(R"((\d{1,4})([./-]| |\. )(\d{1,2})([./-]| |\. )(\d{1,4})\.?)");
    std::string plain = plainlyTyped(text);
    for (const char* sign : {"年", "月"})
        plain = replaced(plain, sign, "-");
    plain = replaced(plain, "日", "");
    std::smatch parts;
    if (!std::regex_match(plain, parts, form) || parts[2] != parts[4])
        return std::nullopt;
    const std::string a = parts[1], b = parts[3], c = parts[5];
    if (a.size() == 4 || order == DateOrder::yearMonthDay)
        return dayOf(a, b, c);
    return order == DateOrder::dayMonthYear ? dayOf(c, b, a) : dayOf(c, a, b);
}

std::optional<std::string> typedClock(const std::string& text) {
    static const std::regex form(R"((\d{1,2}) ?[:.h] ?(\d{2}))");
    std::string plain = plainlyTyped(text);
    plain = replaced(plain, "時", ":");
    plain = replaced(plain, "分", "");
    std::smatch parts;
    if (!std::regex_match(plain, parts, form))
        return std::nullopt;
    const int hour = std::stoi(parts[1]);
    const int minute = std::stoi(parts[2]);
    if (hour > 23 || minute > 59)
        return std::nullopt;
    return twoDigits(hour) + ":" + twoDigits(minute);
}

std::string dayInOrder(int year, int month, int day, DateOrder order, const std::string& sign) {
    const std::string y = std::to_string(year), m = std::to_string(month), d = std::to_string(day);
    switch (order) {
        case DateOrder::dayMonthYear:
            return d + sign + m + sign + y;
        case DateOrder::monthDayYear:
            return m + sign + d + sign + y;
        case DateOrder::yearMonthDay:
            break;
    }
    return y + sign + m + sign + d;
}

}  // namespace rackbook
