// Reminders as a calendar that other programs take in: iCalendar, RFC 5545.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace rackbook {

// Something that lies on whole days. All texts are UTF-8.
struct CalendarEntry {
    std::string uid;                      // the same each time it is written, and no other's
    std::int64_t day = 0;                 // days since 1970-01-01
    std::optional<std::int64_t> lastDay;  // the last of several, included
    std::string summary;                  // not blank
    std::string description;              // may be empty
    bool reminds = false;                 // at nine in the morning of the first day
};

struct CalendarStamp {
    std::string productId;         // a formal identifier, as "-//Rackbook//Rackbook 0.1.0//EN"
    std::int64_t writtenAt_s = 0;  // seconds since 1970-01-01T00:00:00Z
};

// The bytes of the file: entries by day, then by uid, whatever order they are given in; the same
// entries and stamp give the same bytes. They take no time that would count as busy. Lines end with
// CRLF and are folded at 75 octets between characters.
//
// Throws InputError where there are no entries (RFC 5545 has no empty calendar); where a uid is
// blank or stands twice; where a summary or the product is blank; where a text is not UTF-8 or
// holds a control character (line feeds and tabs are allowed in the summary and the description);
// where the last day is before the first, or one of them outside 0001-01-01 … 3000-12-30 (the day
// after the last is written too, and libical ends with the year 3000); and where the moment lies
// outside the years 1 to 3000.
std::string calendarText(const std::vector<CalendarEntry>& entries, const CalendarStamp& stamp);

}  // namespace rackbook
