#include "exchange/CalendarFile.h"

#include <libical/ical.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <new>
#include <set>
#include <tuple>

#include "base/CivilTime.h"
#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr int morning_s = 9 * 60 * 60;
constexpr std::int64_t secondsPerDay = 24 * 60 * 60;

struct ComponentDeleter {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, ComponentDeleter>;

struct TextDeleter {
    void operator()(char* text) const { std::free(text); }
};

// Everything of libical that makes something gives null where there is no memory.
template <class Made>
Made* made(Made* something) {
    if (!something)
        throw std::bad_alloc();
    return something;
}

void add(const Component& to, icalproperty* property) {
    icalcomponent_add_property(to.get(), made(property));
}

std::string placeOf(const CalendarEntry& entry) {
    return "calendar entry " + excerpt(entry.uid);
}

std::string dayText(std::int64_t day) {
    return formatDay(day * minutesPerDay);
}

void requireText(const std::string& where, const std::string& what, const std::string& text,
                 bool mayHaveLines) {
    if (invalidUtf8At(text))
        throw InputError(where, what + " is not UTF-8", "Give UTF-8.");
    const bool hasLines = text.find_first_of("\n\t") != std::string::npos;
    if (controlCharacterIn(text) || (hasLines && !mayHaveLines))
        throw InputError(where, what + " holds a control character", "Take it out.");
}

void requireDay(const std::string& where, std::int64_t day) {
    static const std::int64_t first = daysFromCivil({1, 1, 1});
    static const std::int64_t last = daysFromCivil({3000, 12, 30});
    if (day < first || day > last)
        throw InputError(where, "the day lies outside 0001-01-01 to 3000-12-30",
                         "Give a day in the years 1 to 3000.");
}

void requireSound(const CalendarEntry& entry) {
    if (invalidUtf8At(entry.uid) || isBlank(entry.uid))
        throw InputError("calendar", "an entry has no uid that could be read",
                         "Give each entry a uid of its own.");
    const std::string where = placeOf(entry);
    requireText(where, "the uid", entry.uid, false);
    requireText(where, "the summary", entry.summary, true);
    requireText(where, "the description", entry.description, true);
    if (isBlank(entry.summary))
        throw InputError(where, "the summary is blank", "Say in it what is to be done.");
    requireDay(where, entry.day);
    if (!entry.lastDay)
        return;
    requireDay(where, *entry.lastDay);
    if (*entry.lastDay < entry.day)
        throw InputError(where,
                         "its last day " + dayText(*entry.lastDay) + " is before its first, " +
                             dayText(entry.day),
                         "Exchange the two.");
}

void requireSound(const std::vector<CalendarEntry>& entries, const CalendarStamp& stamp) {
    if (entries.empty())
        throw InputError("calendar", "there are no entries", "Write one when there are some.");
    requireText("calendar", "the product", stamp.productId, false);
    if (isBlank(stamp.productId))
        throw InputError("calendar", "the product is blank", "Name it.");
    if (stamp.writtenAt_s < daysFromCivil({1, 1, 1}) * secondsPerDay ||
        stamp.writtenAt_s >= daysFromCivil({3001, 1, 1}) * secondsPerDay)
        throw InputError("calendar", "the moment of writing lies outside the years 1 to 3000",
                         "Give seconds since 1970.");
    std::set<std::string> uids;
    for (const CalendarEntry& entry : entries) {
        requireSound(entry);
        if (!uids.insert(entry.uid).second)
            throw InputError(placeOf(entry), "two entries have this uid",
                             "Give each entry a uid of its own.");
    }
}

icaltimetype dateOf(std::int64_t day) {
    const CivilDate date = civilFromDays(day);
    // Not icaltime_null_date, whose clock time of -1 h is summed with the date to tell nothing.
    icaltimetype time = icaltime_null_time();
    time.is_date = 1;
    time.year = static_cast<int>(date.year);
    time.month = date.month;
    time.day = date.day;
    return time;
}

// Not by icaltime_from_timet_with_zone, which goes through time_t and its years.
icaltimetype instantOf(std::int64_t epoch_s) {
    const std::int64_t day = dayOf(epoch_s / 60 - (epoch_s % 60 < 0 ? 1 : 0));
    const auto inDay_s = static_cast<int>(epoch_s - day * secondsPerDay);
    icaltimetype time = dateOf(day);
    time.is_date = 0;
    time.hour = inDay_s / 3600;
    time.minute = inDay_s / 60 % 60;
    time.second = inDay_s % 60;
    time.zone = icaltimezone_get_utc_timezone();
    return time;
}

// The time of a trigger counts from the beginning of a day where the entry has no clock time
// (RFC 5545, 3.8.6.3).
Component alarmOf(const CalendarEntry& entry) {
    Component alarm(made(icalcomponent_new(ICAL_VALARM_COMPONENT)));
    icaltriggertype trigger{};
    trigger.time = icaltime_null_time();
    trigger.duration = icaldurationtype_from_int(morning_s);
    add(alarm, icalproperty_new_action(ICAL_ACTION_DISPLAY));
    add(alarm, icalproperty_new_description(entry.summary.c_str()));
    add(alarm, icalproperty_new_trigger(trigger));
    return alarm;
}

Component eventOf(const CalendarEntry& entry, const icaltimetype& writtenAt) {
    Component event(made(icalcomponent_new(ICAL_VEVENT_COMPONENT)));
    add(event, icalproperty_new_uid(entry.uid.c_str()));
    add(event, icalproperty_new_dtstamp(writtenAt));
    add(event, icalproperty_new_dtstart(dateOf(entry.day)));
    add(event, icalproperty_new_dtend(dateOf(entry.lastDay.value_or(entry.day) + 1)));
    add(event, icalproperty_new_summary(entry.summary.c_str()));
    if (!entry.description.empty())
        add(event, icalproperty_new_description(entry.description.c_str()));
    add(event, icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
    if (entry.reminds)
        icalcomponent_add_component(event.get(), alarmOf(entry).release());
    return event;
}

// libical 3.0 also cuts between the CR and the LF that end a line (seen where the line's last octet
// is the 75th), so its folds are taken out and made anew.
std::string unfolded(std::string text) {
    for (std::size_t at = 0; (at = text.find("\r\n ", at)) != std::string::npos;)
        text.erase(at, 3);
    return text;
}

// Pre: valid UTF-8.
std::string folded(std::string_view text) {
    constexpr std::size_t most = 75;  // octets of a line, RFC 5545, 3.1
    std::string lines;
    std::size_t inLine = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = offsetOfCodePoint(text.substr(at), 1);
        const bool isBreak = text[at] == '\r' || text[at] == '\n';
        if (!isBreak && inLine + length > most) {
            lines += "\r\n ";
            inLine = 1;
        }
        lines.append(text, at, length);
        inLine = isBreak ? 0 : inLine + length;
        at += length;
    }
    return lines;
}

}  // namespace

std::string calendarText(const std::vector<CalendarEntry>& entries, const CalendarStamp& stamp) {
    requireSound(entries, stamp);
    std::vector<const CalendarEntry*> ordered;
    for (const CalendarEntry& entry : entries)
        ordered.push_back(&entry);
    std::sort(ordered.begin(), ordered.end(), [](const CalendarEntry* a, const CalendarEntry* b) {
        return std::tie(a->day, a->uid) < std::tie(b->day, b->uid);
    });

    const Component calendar(made(icalcomponent_new(ICAL_VCALENDAR_COMPONENT)));
    add(calendar, icalproperty_new_version("2.0"));
    add(calendar, icalproperty_new_prodid(stamp.productId.c_str()));
    const icaltimetype writtenAt = instantOf(stamp.writtenAt_s);
    for (const CalendarEntry* entry : ordered)
        icalcomponent_add_component(calendar.get(), eventOf(*entry, writtenAt).release());
    const std::unique_ptr<char, TextDeleter> text(
        made(icalcomponent_as_ical_string_r(calendar.get())));
    return folded(unfolded(text.get()));
}

}  // namespace rackbook
