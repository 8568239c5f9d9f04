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

std::string SheetWords::withUnit(const std::string& unit, const std::string& figure) const {
    return filled("unit." + unit, {{"value", figure}});
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
    const std::string written = withoutClock(date.text());
    const std::string words = reading(written, DateStyle::table);
    return words == written ? written
                            : filled("dateRead", {{"written", written}, {"words", words}});
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
        return filled("dateBetween", {{"from", dayOf(bounds.earliest(), style)},
                                      {"to", dayOf(bounds.latest(), style)}});
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

std::string shortWords(const std::string& words) {
    return words.substr(0, words.find(';'));
}

}  // namespace rackbook
