#include "sheets/SheetWords.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Ranges.h"

namespace rackbook {

namespace {

constexpr double mmPerInch = 25.4;

bool endsInQualifier(std::string_view text) {
    return !text.empty() && (text.back() == '?' || text.back() == '~' || text.back() == '%');
}

// "2026-03-04T09:30" to "2026-03-04", in both halves of an interval.
std::string withoutClock(std::string_view text) {
    const std::size_t slash = text.find('/');
    if (slash != std::string_view::npos)
        return withoutClock(text.substr(0, slash)) + "/" + withoutClock(text.substr(slash + 1));
    return std::string(text.substr(0, text.find('T')));
}

int twoDigits(std::string_view text) {
    return (text[0] - '0') * 10 + (text[1] - '0');
}

// Halves of a decimal go up, also those that no double holds and that sums miss by a hair: 55.25
// and 3 × 6.75 both read as on paper. The hair is far below any figure that is shown.
std::string roundedAway(double value, int decimals) {
    constexpr double hair = 1e-12;
    const double most = 1e-3 * std::pow(10.0, -decimals);
    const double nudge = std::min(std::abs(value) * hair, most);
    return formatFixed(value + std::copysign(nudge, value), decimals);
}

template <class Iterator>
std::string joinedWith(const std::string& separator, Iterator part, Iterator end) {
    std::string text;
    for (bool first = true; part != end; ++part, first = false)
        text += (first ? "" : separator) + *part;
    return text;
}

}  // namespace

// In one pass, so that braces in a title or a name stay what they are.
std::string SheetWords::filled(const std::string& key, Filling filling) const {
    const std::string& label = m_template.label(key);
    std::string text;
    for (std::size_t at = 0; at < label.size();) {
        const auto fits = [&](const auto& entry) {
            return label.compare(at, entry.first.size() + 2,
                                 "{" + std::string(entry.first) + "}") == 0;
        };
        const auto* found = std::find_if(filling.begin(), filling.end(), fits);
        if (found == filling.end()) {
            text += label[at++];
        } else {
            text += found->second;
            at += found->first.size() + 2;
        }
    }
    return text;
}

std::string SheetWords::inRow(const std::vector<std::string>& parts) const {
    return joinedWith(m_template.label("listSeparator"), parts.begin(), parts.end());
}

std::string SheetWords::listed(const std::vector<std::string>& parts) const {
    if (parts.size() < 2)
        return inRow(parts);
    return joinedWith(m_template.label("listSeparator"), parts.begin(), parts.end() - 1) +
           m_template.label("listLast") + parts.back();
}

std::string SheetWords::apart(const std::vector<std::string>& parts) const {
    return joinedWith(m_template.label("listApart"), parts.begin(), parts.end());
}

std::string SheetWords::labelled(const std::string& label, const std::string& value) const {
    return filled("labelled", {{"label", label}, {"value", value}});
}

std::string SheetWords::sentences(const std::vector<std::string>& parts) const {
    return joinedWith(m_template.label("sentenceGap"), parts.begin(), parts.end());
}

std::string SheetWords::count(std::int64_t value) const {
    return m_template.locale().figure(std::to_string(value));
}

std::string SheetWords::signedCount(std::int64_t value) const {
    return (value > 0 ? "+" : "") + count(value);
}

std::string SheetWords::figure(double value, int decimals) const {
    return m_template.locale().figure(roundedAway(value, decimals));
}

std::string SheetWords::shortFigure(double value) const {
    return m_template.locale().figure(formatShortest(value));
}

std::string SheetWords::percent(double share, int decimals) const {
    return figure(share * 100, decimals);
}

std::string SheetWords::percentRange(const Estimate& share, int decimals) const {
    return percent(share.low, decimals) + "–" + percent(share.high, decimals);
}

// Plural rules of CLDR 41 for cardinal numbers, of the languages that sheets come in; others are
// taken to have the English one.
bool SheetWords::isOne(const std::string& shown) const {
    if (m_template.language().compare(0, 2, "fr") == 0)
        return (shown == "0" || shown == "1" || shown.rfind("0,", 0) == 0 ||
                shown.rfind("1,", 0) == 0) &&
               shown.find_first_not_of("0123456789,") == std::string::npos;
    return shown == "1";
}

std::string SheetWords::counted(const std::string& key, const std::string& shown,
                                Filling filling) const {
    return filled(isOne(shown) ? key + ".one" : key, filling);
}

std::string SheetWords::withUnit(const std::string& unit, const std::string& figure) const {
    const std::string key = "unit." + unit;
    return unit == "days" ? counted(key, figure, {{"value", figure}})
                          : filled(key, {{"value", figure}});
}

std::string SheetWords::size(const std::optional<double>& height_mm,
                             const std::optional<double>& width_mm, LengthUnit unit) const {
    if (!height_mm || !width_mm)
        return m_template.label("notRecorded");
    const std::string mm =
        filled("size.mm", {{"height", shortFigure(*height_mm)}, {"width", shortFigure(*width_mm)}});
    if (unit == LengthUnit::mm)
        return mm;
    return filled("size.in", {{"height", figure(*height_mm / mmPerInch, 2)},
                              {"width", figure(*width_mm / mmPerInch, 2)}}) +
           " (" + mm + ")";
}

std::string SheetWords::day(CivilMinute minute) const {
    return dayOf(minute, DateStyle::prose);
}

std::string SheetWords::month(int month) const {
    return m_template.locale().monthAlone(month);
}

std::string SheetWords::date(const EdtfDate& date) const {
    return reading(withoutClock(date.text()), DateStyle::prose);
}

std::string SheetWords::dateOrNotRecorded(const std::optional<EdtfDate>& given) const {
    return given ? date(*given) : m_template.label("notRecorded");
}

std::string SheetWords::tableDate(const EdtfDate& date) const {
    return reading(withoutClock(date.text()), DateStyle::table);
}

std::string SheetWords::when(const EdtfDate& date) const {
    const std::string written = withoutClock(date.text());
    const bool isPlain = written.find_first_not_of("0123456789-") == std::string::npos;
    const bool isSeason = written.size() == 7 && written[5] == '2';
    const std::string words = reading(written, DateStyle::prose);
    if (!isPlain || isSeason || written.front() == '-')
        return words;
    return filled(written.size() == 10 ? "when.day" : "when.longer", {{"date", words}});
}

std::string SheetWords::span(CivilMinute earliest, CivilMinute latest) const {
    const bool fromEver = earliest <= beginningOfTime;
    const bool forEver = latest >= endOfTime;
    if (fromEver && forEver)
        return m_template.label("notKnown");
    if (fromEver || forEver)
        return filled(fromEver ? "dateOpenStart" : "dateOpenEnd",
                      {{"date", day(fromEver ? latest : earliest)}});
    if (rackbook::dayOf(earliest) == rackbook::dayOf(latest))
        return day(earliest);
    const CivilDate first = civilFromDays(rackbook::dayOf(earliest));
    const CivilDate last = civilFromDays(rackbook::dayOf(latest));
    const bool wholeYears =
        first.month == 1 && first.day == 1 && last.month == 12 && last.day == 31;
    if (wholeYears && first.year == last.year)
        return plainDate(std::to_string(first.year));
    // As an approximate year is read (Edtf.h).
    if (wholeYears && first.year + 2 == last.year)
        return filled("dateAbout", {{"date", plainDate(std::to_string(first.year + 1))}});
    return filled("dateBetween",
                  {{"from", wholeYears ? plainDate(std::to_string(first.year)) : day(earliest)},
                   {"to", wholeYears ? plainDate(std::to_string(last.year)) : day(latest)}});
}

std::string SheetWords::tableDateOrNotRecorded(const std::optional<EdtfDate>& given) const {
    return given ? tableDate(*given) : m_template.label("notRecorded");
}

std::string SheetWords::textOrNotRecorded(const std::optional<std::string>& text) const {
    return text && !text->empty() ? *text : m_template.label("notRecorded");
}

std::string SheetWords::reading(std::string_view written, DateStyle style) const {
    const std::size_t slash = written.find('/');
    if (slash == std::string_view::npos)
        return oneDate(written, style);
    const std::string_view from = written.substr(0, slash);
    const std::string_view to = written.substr(slash + 1);
    if (from == ".." || from.empty())
        return filled(from.empty() ? "dateUnknownStart" : "dateOpenStart",
                      {{"date", oneDate(to, style)}});
    if (to == ".." || to.empty())
        return filled(to.empty() ? "dateUnknownEnd" : "dateOpenEnd",
                      {{"date", oneDate(from, style)}});
    return filled("dateInterval", {{"from", oneDate(from, style)}, {"to", oneDate(to, style)}});
}

std::string SheetWords::oneDate(std::string_view written, DateStyle style) const {
    if (endsInQualifier(written)) {
        const std::string plain = oneDate(written.substr(0, written.size() - 1), style);
        const char* key = written.back() == '~'   ? "dateAbout"
                          : written.back() == '?' ? "dateUncertain"
                                                  : "dateAboutUncertain";
        return filled(key, {{"date", plain}});
    }
    if (written.find('X') != std::string_view::npos) {
        const EdtfDate bounds = EdtfDate::parse(written);
        const bool isYear = written.find('-') == std::string_view::npos;
        const auto bound = [&](CivilMinute minute) {
            return isYear ? plainDate(std::to_string(civilFromDays(rackbook::dayOf(minute)).year))
                          : dayOf(minute, style);
        };
        return filled("dateBetween",
                      {{"from", bound(bounds.earliest())}, {"to", bound(bounds.latest())}});
    }
    const bool isSeason = written.size() == 7 && written[4] == '-' && written[5] == '2';
    if (isSeason)
        return filled("season" + std::string(written.substr(5)),
                      {{"year", std::string(written.substr(0, 4))}});
    return style == DateStyle::table ? std::string(written) : plainDate(written);
}

// A year, a month or a day of the years 0000 to 9999; others stay as they are written, since they
// are no dates of prints.
std::string SheetWords::plainDate(std::string_view written) const {
    const bool isPlain = written.size() >= 4 &&
                         written.find_first_not_of("0123456789-") == std::string_view::npos &&
                         written.front() != '-';
    if (!isPlain)
        return std::string(written);
    const std::string year(written.substr(0, 4));
    if (written.size() == 4)
        return filled("dateYear", {{"year", year}});
    const int month = twoDigits(written.substr(5));
    if (written.size() == 7)
        return filled("dateMonth",
                      {{"month", m_template.locale().monthAlone(month)}, {"year", year}});
    const int day = twoDigits(written.substr(8));
    return filled(day == 1 ? "dateFirstDay" : "dateDay",
                  {{"day", std::to_string(day)},
                   {"month", m_template.locale().monthInDate(month)},
                   {"year", year}});
}

std::string SheetWords::dayOf(CivilMinute minute, DateStyle style) const {
    const std::string written = formatDay(minute);
    return style == DateStyle::table ? written : plainDate(written);
}

bool printsAsOne(const Estimate& share, int decimals) {
    return roundedAway(share.low * 100, decimals) == roundedAway(share.high * 100, decimals);
}

std::string numberRanges(const std::vector<int>& numbers) {
    std::string text;
    for (const char c : formatRanges(numbers))
        text += c == '-' ? std::string("–") : c == ',' ? std::string(", ") : std::string(1, c);
    return text;
}

std::string asHeading(std::string words) {
    const auto at = [&](std::size_t i) {
        return i < words.size() ? static_cast<unsigned char>(words[i]) : 0u;
    };
    constexpr unsigned toCapital = 0x20;
    if (at(0) >= 'a' && at(0) <= 'z')
        words[0] = static_cast<char>(at(0) - toCapital);
    // U+00E0 to U+00FE, but for the sign of division.
    else if (at(0) == 0xC3 && at(1) >= 0xA0 && at(1) <= 0xBE && at(1) != 0xB7)
        words[1] = static_cast<char>(at(1) - toCapital);
    return words;
}

std::string shortWords(const std::string& words) {
    return words.substr(0, words.find(';'));
}

}  // namespace rackbook
