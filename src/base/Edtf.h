// Dates as well as they are known: Extended Date/Time Format, ISO 8601-2:2019 levels 0 and 1
// (Library of Congress specification, 2019).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/CivilTime.h"

namespace rackbook {

// One date as written, with the first and last minute it can mean on the studio's wall clock.
//
// Accepted: 1985 · 1985-04 · 1985-04-12 · 1985-04-12T09:30[:SS][Z|±hh[:mm]] · -0044 · Y17000 ·
// 201X · 20XX · 1985-XX · 1985-04-XX · 1985-XX-XX · seasons 1985-21 … 1985-24 · a trailing ?, ~
// or % · intervals of these with / · one open (..) or unknown (empty) end.
//
// Readings that the specification leaves to the user:
// - A qualifier (?, ~, %) widens both bounds by one unit of the written precision (common
//   practice, no source).
// - A season may lie anywhere from January of its year to February of the next, because the
//   specification ties it to no hemisphere.
// - A zone shift is kept as written; the bounds are the written clock time.
class EdtfDate {
public:
    // Throws InputError, saying which part is wrong; `where` names the place for the message.
    static EdtfDate parse(std::string_view text, const std::string& where = {});
    static EdtfDate ofDay(CivilMinute minute);
    static EdtfDate ofMinute(CivilMinute minute);

    const std::string& text() const { return m_text; }
    CivilMinute earliest() const { return m_earliest; }
    CivilMinute latest() const { return m_latest; }
    bool isQualified() const;
    bool isInterval() const;
    bool hasTime() const;
    // True where the date spans more than one calendar day.
    bool isBadlyKnown() const;
    // Minutes east of UTC, where a shift was written.
    std::optional<int> utcOffset_min() const;

    // For dates that come back from the book, whose bounds were computed when they went in.
    static EdtfDate restored(std::string text, CivilMinute earliest, CivilMinute latest);

    friend bool operator==(const EdtfDate& a, const EdtfDate& b) { return a.m_text == b.m_text; }
    friend bool operator!=(const EdtfDate& a, const EdtfDate& b) { return !(a == b); }

private:
    std::string m_text;
    CivilMinute m_earliest = 0;
    CivilMinute m_latest = 0;
};

// True only where no reading of the two dates puts a at or after b.
bool certainlyBefore(const EdtfDate& a, const EdtfDate& b);

}  // namespace rackbook
