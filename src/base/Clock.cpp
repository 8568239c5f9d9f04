#include "base/Clock.h"

#include <QByteArray>
#include <QDateTime>
#include <QTimeZone>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "base/Error.h"

namespace rackbook {

namespace {

// 0001-01-01T00:00:00Z and 9999-12-31T23:59:59Z: what four digits of a year can say.
constexpr std::int64_t firstWritable_s = -62'135'596'800;
constexpr std::int64_t lastWritable_s = 253'402'300'799;

QTimeZone zoneNamed(const std::string& timeZone) {
    const QTimeZone zone{QByteArray::fromStdString(timeZone)};
    if (!zone.isValid())
        throw InputError({}, "the system knows no time zone \"" + excerpt(timeZone) + "\"",
                         "Use an IANA name such as Europe/Copenhagen.");
    return zone;
}

}  // namespace

std::int64_t nowEpoch_s() {
    const char* fixed = std::getenv("SOURCE_DATE_EPOCH");
    if (fixed == nullptr || *fixed == '\0')
        return QDateTime::currentSecsSinceEpoch();
    bool ok = false;
    const qint64 value = QByteArray(fixed).toLongLong(&ok);
    const bool isPlain = std::strspn(fixed, "-0123456789") == std::strlen(fixed);
    if (!ok || !isPlain)
        throw UsageError("SOURCE_DATE_EPOCH is not a whole number of seconds", "Unset it.");
    if (value < firstWritable_s || value > lastWritable_s)
        throw UsageError("SOURCE_DATE_EPOCH lies outside the years 1 to 9999", "Unset it.");
    return value;
}

std::string utcText(std::int64_t epoch_s) {
    return QDateTime::fromSecsSinceEpoch(epoch_s, Qt::UTC).toString(Qt::ISODate).toStdString();
}

CivilMinute civilMinuteAt(std::int64_t epoch_s, const std::string& timeZone) {
    const QTimeZone zone = zoneNamed(timeZone);
    const QDateTime moment = QDateTime::fromSecsSinceEpoch(epoch_s, Qt::UTC);
    const std::int64_t local_s = epoch_s + zone.offsetFromUtc(moment);
    return local_s / 60 - (local_s % 60 < 0 ? 1 : 0);
}

bool isKnownTimeZone(const std::string& timeZone) {
    return QTimeZone::isTimeZoneIdAvailable(QByteArray::fromStdString(timeZone));
}

ZoneShifts zoneShiftsOf(const std::string& timeZone) {
    const QTimeZone zone = zoneNamed(timeZone);
    const QDateTime first(QDate(1850, 1, 1), QTime(0, 0), Qt::UTC);
    const QDateTime last(QDate(2150, 1, 1), QTime(0, 0), Qt::UTC);
    std::vector<ZoneShift> shifts = {{beginningOfTime, zone.offsetFromUtc(first) / 60}};
    const auto add = [&shifts](const QTimeZone::OffsetData& change) {
        const int east_min = change.offsetFromUtc / 60;
        if (east_min != shifts.back().east_min)
            shifts.push_back({change.atUtc.toSecsSinceEpoch() / 60, east_min});
    };
    QDateTime listed = first;
    for (const QTimeZone::OffsetData& change : zone.transitions(first, last)) {
        add(change);
        listed = change.atUtc;
    }
    // The list ends in 2037; from there on changes follow a rule and are told one by one. Asked at
    // the very last of the list, Qt 5 knows of none after it.
    for (QDateTime from = listed.addDays(1); from < last;) {
        const QTimeZone::OffsetData next = zone.nextTransition(from);
        if (!next.atUtc.isValid() || next.atUtc <= from || next.atUtc >= last)
            break;
        add(next);
        from = next.atUtc;
    }
    return ZoneShifts(std::move(shifts));
}

bool zoneAllowsOffset(CivilMinute civil, int offset_min, const std::string& timeZone) {
    const QTimeZone zone = zoneNamed(timeZone);
    const QDateTime moment = QDateTime::fromSecsSinceEpoch((civil - offset_min) * 60, Qt::UTC);
    return zone.offsetFromUtc(moment) == offset_min * 60;
}

std::vector<int> shiftsShowing_min(CivilMinute civil, const std::string& timeZone) {
    const QTimeZone zone = zoneNamed(timeZone);
    const auto shiftAt_s = [&zone](std::int64_t epoch_s) {
        return zone.offsetFromUtc(QDateTime::fromSecsSinceEpoch(epoch_s, Qt::UTC));
    };
    std::vector<int> shifts_min;
    // A shift is at most a day, and clocks are not changed twice within two days.
    for (const CivilMinute away : {-minutesPerDay, minutesPerDay}) {
        const int shift_s = shiftAt_s((civil + away) * 60);
        const bool isNew = shifts_min.empty() || shifts_min.back() != shift_s / 60;
        if (isNew && shiftAt_s(civil * 60 - shift_s) == shift_s)
            shifts_min.push_back(shift_s / 60);
    }
    return shifts_min;
}

bool clocksShowed(CivilMinute civil, const std::string& timeZone) {
    return !shiftsShowing_min(civil, timeZone).empty();
}

std::string offsetText(CivilMinute civil, const std::string& timeZone) {
    const QTimeZone zone = zoneNamed(timeZone);
    // The wall clock is near enough to UTC to guess the shift from it; the guess gives the moment.
    const auto offsetAt_s = [&](std::int64_t epoch_s) {
        return zone.offsetFromUtc(QDateTime::fromSecsSinceEpoch(epoch_s, Qt::UTC));
    };
    const int offset_min = offsetAt_s(civil * 60 - offsetAt_s(civil * 60)) / 60;
    char text[16];
    std::snprintf(text, sizeof text, "%c%02d:%02d", offset_min < 0 ? '-' : '+',
                  std::abs(offset_min) / 60, std::abs(offset_min) % 60);
    return text;
}

}  // namespace rackbook
