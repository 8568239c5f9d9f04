#include "exchange/LogHeading.h"

#include <algorithm>
#include <utility>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/CsvText.h"

namespace rackbook {

namespace {

constexpr int mostLinesSearched = 1000;

constexpr std::pair<DateOrder, const char*> orderNames[] = {
    {DateOrder::yearMonthDay, "year-month-day"},
    {DateOrder::dayMonthYear, "day-month-year"},
    {DateOrder::monthDayYear, "month-day-year"}};

struct TextLine {
    int number = 0;
    std::size_t offset = 0;
    std::string_view text;
    char separator = ',';
    std::vector<std::string> fields;

    std::size_t timesNamed(const std::string& name) const {
        return static_cast<std::size_t>(std::count(fields.begin(), fields.end(), name));
    }
};

// Lines before the table are in no form, so that a quote in them is no fault.
std::vector<std::string> fieldsOf(std::string_view line, char separator) {
    try {
        const std::vector<CsvRow> rows = csvRows(line, separator, {});
        std::vector<std::string> fields;
        for (const std::string& field : rows.empty() ? std::vector<std::string>{} : rows[0].fields)
            fields.push_back(normalised(trimmed(field)));
        return fields;
    } catch (const InputError&) {
        return {};
    }
}

std::vector<TextLine> firstLinesOf(std::string_view text) {
    std::vector<TextLine> lines;
    for (std::size_t at = 0; at < text.size() && lines.size() < mostLinesSearched;) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        std::string_view line = text.substr(at, end - at);
        if (!line.empty() && line.back() == '\r')
            line.remove_suffix(1);
        const char separator = csvSeparatorOf(line);
        const int number = static_cast<int>(lines.size()) + 1;
        lines.push_back({number, at, line, separator, fieldsOf(line, separator)});
        at = end + 1;
    }
    return lines;
}

std::string quoted(const std::string& name) {
    return "\"" + excerpt(name) + "\"";
}

std::string listed(const std::vector<std::string>& names) {
    std::vector<std::string> parts;
    for (const std::string& name : names)
        parts.push_back(quoted(name));
    return joined(parts);
}

class HeadingFinder {
public:
    HeadingFinder(std::string_view text, const LightLogTerms& terms, LogFindings& findings)
        : m_lines(firstLinesOf(text)), m_terms(terms), m_findings(findings) {}

    LogHeading find() { return m_terms.columns ? named(*m_terms.columns) : chosen(); }

private:
    using Columns = std::vector<std::size_t>;

    static LogHeading headingAt(const TextLine& line) {
        LogHeading heading;
        heading.line = line.number;
        heading.offset = line.offset;
        heading.separator = line.separator;
        heading.names = line.fields;
        return heading;
    }

    [[noreturn]] void refuse(const TextLine& line, const std::string& what,
                             const std::string& remedy) const {
        throw InputError(m_findings.file() + ":" + std::to_string(line.number),
                         what + "; the columns are " + listed(line.fields), remedy);
    }

    LogHeading named(const LightLogColumns& columns) const {
        std::vector<std::string> wanted = {trimmed(columns.time), trimmed(columns.value)};
        if (columns.date)
            wanted.push_back(trimmed(*columns.date));
        for (std::string& name : wanted)
            name = normalised(name);
        const auto held = [&wanted](const TextLine& line) {
            return std::count_if(wanted.begin(), wanted.end(), [&](const std::string& name) {
                return line.timesNamed(name) > 0;
            });
        };
        // The first of those that hold the most; where none holds any, the first of the longest.
        const auto best = std::max_element(
            m_lines.begin(), m_lines.end(), [&](const TextLine& a, const TextLine& b) {
                return std::pair(held(a), a.fields.size()) < std::pair(held(b), b.fields.size());
            });
        for (const std::string& name : wanted)
            if (best->timesNamed(name) != 1)
                refuse(*best,
                       (best->timesNamed(name) == 0 ? "no column is named "
                                                    : "more than one column is named ") +
                           quoted(name),
                       "Name a column as it is headed, once.");
        LogHeading heading = headingAt(*best);
        const auto columnOf = [&best](const std::string& name) {
            return static_cast<std::size_t>(
                std::find(best->fields.begin(), best->fields.end(), name) - best->fields.begin());
        };
        heading.time = columnOf(wanted[0]);
        heading.value = columnOf(wanted[1]);
        if (columns.date)
            heading.date = columnOf(wanted[2]);
        return heading;
    }

    template <class Holds>
    static Columns columnsWhere(const TextLine& line, const Holds& holds) {
        Columns columns;
        for (std::size_t j = 0; j < line.fields.size(); ++j)
            if (holds(line.fields[j]))
                columns.push_back(j);
        return columns;
    }

    static Columns wholeTimesIn(const TextLine& line, DateOrder order) {
        return columnsWhere(line, [order](const std::string& field) {
            return writtenTimeIn(field, order).has_value();
        });
    }
    static Columns datesIn(const TextLine& line, DateOrder order) {
        return columnsWhere(line, [order](const std::string& field) {
            return writtenDayIn(field, order).has_value();
        });
    }
    static Columns timesOfDayIn(const TextLine& line) {
        return columnsWhere(line, [](const std::string& field) {
            return writtenTimeIn(exampleOf(DateOrder::yearMonthDay), field, DateOrder::yearMonthDay)
                .has_value();
        });
    }

    static bool holdsTimes(const TextLine& line, DateOrder order) {
        return !wholeTimesIn(line, order).empty() ||
               (!datesIn(line, order).empty() && !timesOfDayIn(line).empty());
    }
    bool holdsTimes(const TextLine& line) const { return holdsTimes(line, m_terms.dateOrder); }

    // Line i parted as the line before it, which may be that of the headings.
    TextLine below(std::size_t i) const {
        TextLine line = m_lines[i];
        line.fields = fieldsOf(line.text, m_lines[i - 1].separator);
        return line;
    }

    // The first line with times below one without; better one that is followed by another, since
    // a line such as "begun, 2026-03-04 09:30" may stand before the table.
    std::size_t firstDataLine() const {
        std::size_t first = 0;
        for (std::size_t i = 1; i < m_lines.size(); ++i) {
            if (m_lines[i - 1].fields.size() < 2 || holdsTimes(m_lines[i - 1]) ||
                !holdsTimes(below(i)))
                continue;
            if (i + 1 == m_lines.size() || holdsTimes(m_lines[i + 1]))
                return i;
            first = first == 0 ? i : first;
        }
        return first;
    }

    std::string firstDateIn(const TextLine& line, DateOrder order) const {
        const Columns whole = wholeTimesIn(line, order);
        return line.fields[whole.empty() ? datesIn(line, order).front() : whole.front()];
    }

    // Where lines have times if dates are read the other way round, that is told: in those orders
    // that fit the most lines.
    [[noreturn]] void refuseWithoutTimes() const {
        const TextLine* example = nullptr;
        std::string found;
        std::size_t most = 0;
        std::vector<std::string> orders;
        for (const auto& [order, name] : orderNames) {
            const DateOrder way = order;
            const auto fits = [way](const TextLine& line) { return holdsTimes(line, way); };
            const auto first = std::find_if(m_lines.begin(), m_lines.end(), fits);
            const auto count =
                static_cast<std::size_t>(std::count_if(m_lines.begin(), m_lines.end(), fits));
            if (order == m_terms.dateOrder || count == 0 || count < most)
                continue;
            if (count > most)
                orders.clear();
            most = count;
            example = &*first;
            found = firstDateIn(*first, order);
            orders.emplace_back(name);
        }
        if (!example)
            throw InputError(m_findings.file(),
                             "no line with a time such as " +
                                 std::string(exampleOf(m_terms.dateOrder)) +
                                 " 09:30 follows a line of headings",
                             "Name the columns of time and value (--time, --value, --date), and "
                             "say how dates are written (--date-order).");
        throw InputError(
            m_findings.file() + ":" + std::to_string(example->number),
            quoted(found) + " is not written as " + exampleOf(m_terms.dateOrder) + " is",
            "Say how dates are written, with --date-order " + joined(orders, " or --date-order ") +
                ".");
    }

    LogHeading chosen() {
        const std::size_t first = firstDataLine();
        if (first == 0)
            refuseWithoutTimes();
        const TextLine& headings = m_lines[first - 1];
        TextLine data = below(first);
        data.fields.resize(std::min(data.fields.size(), headings.fields.size()));
        LogHeading heading = headingAt(headings);
        chooseTime(data, headings, heading);
        const std::string reason = chooseValue(data, headings, heading);
        std::string times = quoted(heading.names[heading.time]);
        if (heading.date)
            times = quoted(heading.names[*heading.date]) + " and " + times;
        m_findings.note({heading.line, {}},
                        "times were read from " + times + " and values from " +
                            quoted(heading.names[heading.value]) + ", the only column that " +
                            reason,
                        "Name the columns where that is wrong.");
        return heading;
    }

    void chooseTime(const TextLine& data, const TextLine& headings, LogHeading& heading) const {
        const Columns whole = wholeTimesIn(data, m_terms.dateOrder);
        const Columns dates = datesIn(data, m_terms.dateOrder);
        const Columns timesOfDay = timesOfDayIn(data);
        if (whole.size() == 1) {
            heading.time = whole[0];
        } else if (whole.empty() && dates.size() == 1 && timesOfDay.size() == 1) {
            heading.date = dates[0];
            heading.time = timesOfDay[0];
        } else {
            refuse(headings,
                   whole.empty() && (dates.empty() || timesOfDay.empty())
                       ? "no column holds times"
                       : "more than one column holds times",
                   "Name the columns of time and value.");
        }
    }

    // Why that column was chosen.
    std::string chooseValue(const TextLine& data, const TextLine& headings,
                            LogHeading& heading) const {
        const std::optional<std::string> unit = unitWordIn(nameOf(m_terms.unit));
        const Columns naming = columnsWhere(
            headings, [&unit](const std::string& name) { return unitWordIn(name) == unit; });
        Columns numbers;
        for (std::size_t j = 0; j < data.fields.size(); ++j) {
            std::string field = data.fields[j];
            if (headings.separator != ',')
                std::replace(field.begin(), field.end(), ',', '.');
            if (j != heading.time && j != heading.date && parseNumber(field))
                numbers.push_back(j);
        }
        const Columns& choice = naming.empty() ? numbers : naming;
        if (choice.size() != 1)
            refuse(headings,
                   !naming.empty()
                       ? std::string("more than one column is headed with ") + nameOf(m_terms.unit)
                   : numbers.empty() ? "no column holds numbers"
                                     : "more than one column holds numbers",
                   "Name the columns of time and value.");
        heading.value = choice[0];
        return naming.empty() ? "holds numbers"
                              : std::string("is headed with ") + nameOf(m_terms.unit);
    }

    std::vector<TextLine> m_lines;
    const LightLogTerms& m_terms;
    LogFindings& m_findings;
};

}  // namespace

LogHeading logHeadingIn(std::string_view text, const LightLogTerms& terms, LogFindings& findings) {
    return HeadingFinder(text, terms, findings).find();
}

}  // namespace rackbook
