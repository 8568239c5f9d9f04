#include "commands/LightLogGiven.h"

#include <cstdlib>

#include "base/Clock.h"
#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/OptionRows.h"

namespace rackbook {

namespace {

// "+01:00" as minutes east of UTC.
std::optional<int> shiftIn(const std::string& text) {
    constexpr int most_min = 18 * 60;
    if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':')
        return std::nullopt;
    const std::optional<long long> hours = parseWhole(text.substr(1, 2));
    const std::optional<long long> minutes = parseWhole(text.substr(4, 2));
    if (!hours || !minutes || *hours < 0 || *minutes < 0 || *minutes > 59)
        return std::nullopt;
    const int shift_min = static_cast<int>(*hours * 60 + *minutes);
    if (shift_min > most_min)
        return std::nullopt;
    return text[0] == '-' ? -shift_min : shift_min;
}

LogClock clockGiven(const CommandContext& context, const Book& studio) {
    const std::string word = context.arguments.value("clock").value_or("studio");
    if (word == "studio")
        return LogClock::onWall(studio.timeZone);
    if (word == "utc")
        return LogClock::atShift(0);
    if (word == "own")
        return LogClock::asWritten();
    if (const std::optional<int> shift_min = shiftIn(word))
        return LogClock::atShift(*shift_min);
    throw UsageError("\"" + excerpt(word) + "\" is no clock for --clock",
                     "Give studio, utc, own, or a shift east of UTC such as +01:00.");
}

LightUnit unitGiven(const CommandContext& context) {
    const std::string word = context.arguments.value("unit").value_or("lx");
    if (const std::optional<LightUnit> unit = lightUnitNamed(word))
        return *unit;
    throw UsageError("\"" + excerpt(word) + "\" is no unit for --unit",
                     "Give lx, klx, W/m2, mW/m2 or uW/cm2.");
}

DateOrder orderGiven(const CommandContext& context) {
    const std::string word = context.arguments.value("date-order").value_or("year-month-day");
    if (word == "day-month-year")
        return DateOrder::dayMonthYear;
    return word == "month-day-year" ? DateOrder::monthDayYear : DateOrder::yearMonthDay;
}

std::optional<LightLogColumns> columnsGiven(const CommandContext& context) {
    const std::optional<std::string> time = context.arguments.value("time");
    const std::optional<std::string> value = context.arguments.value("value");
    const std::optional<std::string> date = context.arguments.value("date");
    if (!time && !value && !date)
        return std::nullopt;
    if (!time || !value)
        throw UsageError("a column is named, and not both --time and --value",
                         "Name both, and --date where dates have a column of their own; or none, "
                         "where they can be told apart.");
    return LightLogColumns{*time, date, *value};
}

}  // namespace

std::vector<OptionSpec> lightLogOptions() {
    OptionSpec order = choiceOption("date-order", "ORDER", "Which way round dates are written.",
                                    {"year-month-day", "day-month-year", "month-day-year"});
    order.defaultText = "year-month-day";
    return {
        valueOption("unit", "UNIT",
                    "What the values are in: lx or klx of light; W/m2, mW/m2 or uW/cm2 of near "
                    "ultraviolet (UV-A).",
                    "lx"),
        valueOption("clock", "CLOCK",
                    "What clock the times are of: studio (with its summer time), utc, own (each "
                    "time has its shift behind it), or a shift east of UTC that always holds, such "
                    "as +01:00.",
                    "studio"),
        std::move(order),
        valueOption("time", "HEADING", "The column of times, where the file leaves it open."),
        valueOption("date", "HEADING", "The column of dates, where they have one."),
        valueOption("value", "HEADING", "The column of values, where the file leaves it open.")};
}

LightLogTerms lightLogTermsGiven(const CommandContext& context, const Book& studio) {
    LightLogTerms terms;
    terms.unit = unitGiven(context);
    terms.clock = clockGiven(context, studio);
    terms.dateOrder = orderGiven(context);
    terms.columns = columnsGiven(context);
    constexpr std::int64_t s_min = 60;
    terms.present = LogPresent{nowEpoch_s() / s_min, nowAt(studio).text() + " at the studio"};
    return terms;
}

std::string clockWords(const LogClock& clock) {
    switch (clock.kind()) {
        case LogClock::Kind::wall:
            return "the studio's clock (" + clock.timeZone() + ")";
        case LogClock::Kind::written:
            return "the shift behind each time";
        case LogClock::Kind::fixed:
            break;
    }
    const int shift_min = clock.shift_min();
    if (shift_min == 0)
        return "UTC";
    const auto two = [](int number) {
        return std::string(number < 10 ? "0" : "") + std::to_string(number);
    };
    return std::string("UTC") + (shift_min < 0 ? "-" : "+") + two(std::abs(shift_min) / 60) + ":" +
           two(std::abs(shift_min) % 60) + " all year";
}

}  // namespace rackbook
