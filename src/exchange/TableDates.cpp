#include "exchange/TableDates.h"

#include <QLocale>
#include <QString>
#include <algorithm>
#include <array>
#include <map>

#include "base/CivilTime.h"
#include "base/Edtf.h"
#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/FitId.h"
#include "exchange/MeasurementWords.h"

namespace rackbook {

namespace {

using Parts = std::vector<std::string>;

bool isDigits(std::string_view text) {
    return !text.empty() &&
           std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// "4.3.2019" as {"4", "3", "2019"}; empty where the marks between differ or there are other
// characters.
Parts numbersIn(std::string_view text) {
    Parts parts(1);
    char mark = '\0';
    for (const char c : text) {
        if (c == '.' || c == '/' || c == '-') {
            if ((mark != '\0' && c != mark) || parts.back().empty())
                return {};
            mark = c;
            parts.emplace_back();
        } else if (c >= '0' && c <= '9') {
            parts.back() += c;
        } else {
            return {};
        }
    }
    return parts.back().empty() ? Parts{} : parts;
}

enum class YearFault { none, twoDigits, noYear };

struct YearRead {
    int year = 0;
    YearFault fault = YearFault::none;
};

YearRead yearIn(const std::string& text, const DateForm& form) {
    if (text.size() == 4)
        return {static_cast<int>(*parseWhole(text)), YearFault::none};
    if (text.size() != 2)
        return {0, YearFault::noYear};
    if (!form.twoDigitYearsFrom)
        return {0, YearFault::twoDigits};
    const int century = *form.twoDigitYearsFrom / 100 * 100;
    const int year = century + static_cast<int>(*parseWhole(text));
    return {year < *form.twoDigitYearsFrom ? year + 100 : year, YearFault::none};
}

CellValue<std::string> refused(std::string what, std::string remedy) {
    return {std::nullopt, std::move(what), std::move(remedy)};
}

CellValue<std::string> refusedYear(const YearRead& year) {
    return year.fault == YearFault::twoDigits
               ? refused("the year has two digits",
                         "Say in the mapping where they begin, such as \"twoDigitYearsFrom\": "
                         "1950, or write the year in full.")
               : refused("this is no date", "Write the year with four digits.");
}

// Day 0: the month as a whole.
CellValue<std::string> dated(const std::string& yearText, int month, int day,
                             const DateForm& form) {
    const YearRead year = yearIn(yearText, form);
    if (year.fault != YearFault::none)
        return refusedYear(year);
    if (month < 1 || month > 12 || day < 0 || day > daysInMonth(year.year, month))
        return refused("the calendar has no such day",
                       "Look it up, or say another order of dates.");
    const std::string text =
        formatDay(daysFromCivil({year.year, month, std::max(day, 1)}) * minutesPerDay);
    return {day == 0 ? text.substr(0, text.rfind('-')) : text, {}, {}};
}

int smallNumber(const std::string& text) {
    constexpr std::size_t most = 2;
    return text.size() > most || !isDigits(text) ? 99 : static_cast<int>(*parseWhole(text));
}

CellValue<std::string> inOrder(const Parts& parts, DateOrder order, const DateForm& form) {
    const bool yearFirst = order == DateOrder::yearMonthDay;
    if (parts.size() == 2)
        return yearFirst ? dated(parts[0], smallNumber(parts[1]), 0, form)
                         : dated(parts[1], smallNumber(parts[0]), 0, form);
    if (yearFirst)
        return dated(parts[0], smallNumber(parts[1]), smallNumber(parts[2]), form);
    const bool dayFirst = order == DateOrder::dayMonthYear;
    return dated(parts[2], smallNumber(parts[dayFirst ? 1 : 0]),
                 smallNumber(parts[dayFirst ? 0 : 1]), form);
}

// Names and usual short forms, in German and English, without points.
const std::map<std::string, int>& monthNames() {
    static const std::map<std::string, int> names = [] {
        std::map<std::string, int> found;
        for (const QLocale& locale : {QLocale(QLocale::German, QLocale::Germany),
                                      QLocale(QLocale::German, QLocale::Austria),
                                      QLocale(QLocale::English, QLocale::UnitedStates),
                                      QLocale(QLocale::English, QLocale::UnitedKingdom)})
            for (int month = 1; month <= 12; ++month)
                for (const QLocale::FormatType length : {QLocale::LongFormat, QLocale::ShortFormat})
                    for (QString name : {locale.monthName(month, length),
                                         locale.standaloneMonthName(month, length)})
                        found.emplace(comparedText(name.remove(QChar(u'.')).toStdString()), month);
        return found;
    }();
    return names;
}

// The words of a text, without points and commas.
Parts wordsIn(std::string_view text) {
    Parts words;
    std::string word;
    for (const char c : std::string(text) + " ") {
        if (c != ' ' && c != '.' && c != ',') {
            word += c;
        } else if (!word.empty()) {
            words.push_back(word);
            word.clear();
        }
    }
    return words;
}

std::optional<CellValue<std::string>> byMonthName(std::string_view text, const DateForm& form) {
    const Parts words = wordsIn(text);
    if (words.size() < 2 || words.size() > 3)
        return std::nullopt;
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        const auto found = monthNames().find(comparedText(words[i]));
        if (found == monthNames().end())
            continue;
        if (words.size() == 2)
            return dated(words[1], found->second, 0, form);
        const std::string& day = words[i == 0 ? 1 : 0];
        const int number = smallNumber(day);
        return dated(words[2], found->second, number == 0 ? 99 : number, form);
    }
    return std::nullopt;
}

std::optional<std::string> edtfIn(const std::string& text) {
    try {
        return EdtfDate::parse(text).text();
    } catch (const InputError&) {
        return std::nullopt;
    }
}

// "14:30" behind a day; nothing where it is none.
std::optional<std::string> minuteIn(std::string_view text) {
    constexpr std::int64_t minute_ms = 60'000;
    const std::optional<WrittenTime> time =
        writtenTimeIn("1970-01-01", text, DateOrder::yearMonthDay);
    if (!time || time->shift_min)
        return std::nullopt;
    return formatMinute(time->clock_ms / minute_ms).substr(std::string("1970-01-01").size());
}

CellValue<std::string> ambiguous(const Parts& parts) {
    std::string readings;
    for (const DateOrder order : {DateOrder::dayMonthYear, DateOrder::monthDayYear}) {
        const CellValue<std::string> reading =
            parts.size() == 3 ? inOrder(parts, order, {}) : CellValue<std::string>{};
        if (reading.value && readings.find(*reading.value) == std::string::npos)
            readings += (readings.empty() ? "" : " or ") + *reading.value;
    }
    const bool isTwo = readings.find(" or ") != std::string::npos;
    return refused(isTwo ? "this date can be " + readings
                         : "the mapping does not say in which order dates are written",
                   "Say it in the mapping: \"dates\": \"dmy\", \"mdy\" or \"ymd\"; without that "
                   "only dates such as 2019-03-04 are read.");
}

CellValue<std::string> plainDate(const std::string& text, const DateForm& form) {
    const std::size_t space = text.find(' ');
    const std::string day = text.substr(0, space);
    const Parts parts = numbersIn(day);
    const bool isNumbers = parts.size() == 2 || parts.size() == 3;
    if (const std::optional<std::string> edtf = edtfIn(text))
        return {edtf, {}, {}};
    if (isNumbers && !form.order)
        return ambiguous(parts);
    if (isNumbers) {
        CellValue<std::string> date = inOrder(parts, *form.order, form);
        if (!date.value || space == std::string::npos)
            return date;
        const std::optional<std::string> minute = minuteIn(trimmed(text.substr(space)));
        if (parts.size() == 3 && minute)
            return {*date.value + *minute, {}, {}};
    }
    if (const auto named = byMonthName(text, form))
        return *named;
    return refused("this is no date",
                   "Write it as well as it is known, such as 2019-03-04, 2019-03, 2019, 2019~ for "
                   "about and 2019? for perhaps; schema/README.md lists the ways.");
}

// The text without a word for about before it; whether there was one.
bool takeAbout(std::string& text) {
    static const std::array<const char*, 9> words = {"ca.",  "ca",    "circa",  "c.",     "um",
                                                     "etwa", "about", "around", "approx."};
    const std::string compared = comparedText(text);
    for (const std::string word : words) {
        const bool fits = compared.compare(0, word.size(), word) == 0 &&
                          compared.size() > word.size() &&
                          (word.back() == '.' || compared[word.size()] == ' ' ||
                           isDigits(compared.substr(word.size(), 1)));
        if (!fits)
            continue;
        text = trimmed(text.substr(word.size()));
        return true;
    }
    return false;
}

}  // namespace

CellValue<std::string> dateIn(std::string_view written, const DateForm& form) {
    std::string text = trimmed(std::string(written));
    if (const std::optional<std::string> edtf = edtfIn(text))
        return {edtf, {}, {}};
    std::string qualifier;
    const bool isDoubtful = !text.empty() && text.back() == '?';
    if (isDoubtful)
        text = trimmed(text.substr(0, text.size() - 1));
    const bool isAbout = takeAbout(text);
    if (isAbout || isDoubtful)
        qualifier = isAbout && isDoubtful ? "%" : isAbout ? "~" : "?";
    CellValue<std::string> date = plainDate(text, form);
    if (!date.value || qualifier.empty())
        return date;
    const std::optional<std::string> whole = edtfIn(*date.value + qualifier);
    return whole ? CellValue<std::string>{whole, {}, {}}
                 : refused("this date cannot be doubtful as well",
                           "Write it in one of the ways that schema/README.md lists.");
}

std::vector<DateOrder> ordersOf(std::string_view text) {
    const std::string whole = trimmed(std::string(text));
    const Parts parts = numbersIn(whole.substr(0, whole.find(' ')));
    std::vector<DateOrder> orders;
    if (parts.size() != 3)
        return orders;
    const DateForm form{std::nullopt, 1950};
    for (const DateOrder order :
         {DateOrder::dayMonthYear, DateOrder::monthDayYear, DateOrder::yearMonthDay})
        if ((order == DateOrder::yearMonthDay) == (parts[0].size() == 4) &&
            inOrder(parts, order, form).value)
            orders.push_back(order);
    return orders;
}

}  // namespace rackbook
