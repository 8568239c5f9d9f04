// The words of one sheet: the labels of its template, and figures and dates as its language and
// country write them.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/CivilTime.h"
#include "base/Edtf.h"
#include "calc/Estimate.h"
#include "records/Book.h"
#include "records/EnumText.h"
#include "sheets/Template.h"

namespace rackbook {

class SheetWords {
public:
    using Filling = std::initializer_list<std::pair<std::string_view, std::string>>;

    // The template must outlive it.
    explicit SheetWords(const SheetTemplate& sheetTemplate) : m_template(sheetTemplate) {}

    const std::string& operator()(const std::string& key) const { return m_template.label(key); }

    // The label with {name} replaced by its filling.
    std::string filled(const std::string& key, Filling filling) const;

    // The label "prefix.name of the enumerator".
    template <class E>
    const std::string& of(const std::string& prefix, E value) const {
        return m_template.label(prefix + "." + textOf(value));
    }

    // "a, b and c", and "a, b, c".
    std::string listed(const std::vector<std::string>& parts) const;
    std::string inRow(const std::vector<std::string>& parts) const;

    // "Artist's proof: 3"
    std::string labelled(const std::string& label, const std::string& value) const;

    // "a; b", as the language sets the mark.
    std::string apart(const std::vector<std::string>& parts) const;

    // One sentence after the other.
    std::string sentences(const std::vector<std::string>& parts) const;

    // Figures with the decimal sign of the language, in groups from 10,000 on. Numbers that are
    // names (a working number, a layer, a year) are written with std::to_string instead.
    std::string count(std::int64_t value) const;
    std::string signedCount(std::int64_t value) const;  // "+1", "0", "−7"
    // Rounded as on paper: what lies halfway goes away from nothing.
    std::string figure(double value, int decimals) const;
    std::string shortFigure(double value) const;  // the fewest digits that say the same

    // A share of 0 … 1 in per cent, and "low–high" of one, without the sign.
    std::string percent(double share, int decimals) const;
    std::string percentRange(const Estimate& share, int decimals) const;

    // The label for one, "key.one", where the language speaks of the shown figure as of one thing
    // ("1 day", in French also "0,5 jour"), else the label "key". Pre: the template has both.
    std::string counted(const std::string& key, const std::string& shown, Filling filling) const;

    // The figure with the label of its unit: "12 %" for "percent", "1 day" for "days".
    std::string withUnit(const std::string& unit, const std::string& figure) const;

    // "300 × 420 mm", in the studio's unit first.
    std::string size(const std::optional<double>& height_mm, const std::optional<double>& width_mm,
                     LengthUnit unit) const;

    // For running text: "20 March 2026", "about March 1998", without a clock time.
    std::string day(CivilMinute minute) const;
    std::string month(int month) const;  // its name alone; pre: 1 … 12
    std::string date(const EdtfDate& date) const;
    std::string dateOrNotRecorded(const std::optional<EdtfDate>& date) const;

    // As it follows a verb: "am 20. März 2026", "im März 2026"; badly known ones without.
    std::string when(const EdtfDate& date) const;

    // "between 1997 and 1999", "2026-03-20" in full; whole years as years, open ends as such. Words
    // for a moment that is known within bounds only.
    std::string span(CivilMinute earliest, CivilMinute latest) const;

    // For narrow columns: as written (ISO 8601), without a clock time; in plain words where it is
    // badly known: "about 1998".
    std::string tableDate(const EdtfDate& date) const;
    std::string tableDateOrNotRecorded(const std::optional<EdtfDate>& date) const;

    std::string textOrNotRecorded(const std::optional<std::string>& text) const;

private:
    enum class DateStyle { prose, table };

    std::string reading(std::string_view written, DateStyle style) const;
    std::string oneDate(std::string_view written, DateStyle style) const;
    std::string plainDate(std::string_view written) const;
    std::string dayOf(CivilMinute minute, DateStyle style) const;

    bool isOne(const std::string& shown) const;

    const SheetTemplate& m_template;
};

// True where both bounds print alike.
bool printsAsOne(const Estimate& share, int decimals);

// "1–12, 15" of {1, 2, … 12, 15}. Pre: sorted, without repeats.
std::string numberRanges(const std::vector<int>& numbers);

// With a capital at the beginning, where that is a Latin letter.
std::string asHeading(std::string words);

// The words before the first semicolon: the name that a container goes by.
std::string shortWords(const std::string& words);

}  // namespace rackbook
