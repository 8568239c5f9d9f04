#include "calc/DoseLedger.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

// No stay of a print is followed back farther; what lies before is without a bound.
constexpr std::int64_t longest_days = 150 * 366;
// Of a reading of an instrument: its spectral and cosine errors (our guess).
constexpr Estimate meteredSpread{0.8, 1, 1.2};

CivilMinute middleOf(const TimeSpan& span) {
    if (span.earliest <= beginningOfTime || span.latest >= endOfTime)
        return span.latest >= endOfTime ? span.earliest : span.latest;
    return span.earliest + (span.latest - span.earliest) / 2;
}

CivilMinute within(CivilMinute minute, CivilMinute from, CivilMinute to) {
    return std::clamp(minute, from, std::max(from, to));
}

Estimate knownPart(const Estimate& value) {
    return value.isKnown() ? value : Estimate{value.low, 0, value.high};
}

LightDose sumOf(const LightDose& a, const LightDose& b) {
    return {sumOf(a.nearUltraviolet_Whm2, b.nearUltraviolet_Whm2), sumOf(a.sunnyDays, b.sunnyDays)};
}

LightDose scaled(const LightDose& dose, double factor) {
    return {scaled(dose.nearUltraviolet_Whm2, factor), scaled(dose.sunnyDays, factor)};
}

// What is left of sums of which one is a part of the other: bounds against bounds.
LightDose restOf(const LightDose& whole, const LightDose& part) {
    const auto rest = [](const Estimate& a, const Estimate& b) {
        return Estimate{std::max(0.0, a.low - b.low),
                        std::isnan(a.best - b.best) ? notKnown : std::max(0.0, a.best - b.best),
                        std::max(0.0, a.high - b.high)};
    };
    return {rest(whole.nearUltraviolet_Whm2, part.nearUltraviolet_Whm2),
            rest(whole.sunnyDays, part.sunnyDays)};
}

// Bounds and best value of three times that lie in one another.
LightDose bracket(const LightDose& low, const LightDose& best, const LightDose& high) {
    const auto take = [](const Estimate& a, const Estimate& b, const Estimate& c) {
        return Estimate{std::min(a.low, c.high), b.best, c.high};
    };
    return {take(low.nearUltraviolet_Whm2, best.nearUltraviolet_Whm2, high.nearUltraviolet_Whm2),
            take(low.sunnyDays, best.sunnyDays, high.sunnyDays)};
}

}  // namespace

DoseLedger::DoseLedger(PlaceUltraviolet& ultraviolet, PlaceRecords records)
    : m_ultraviolet(ultraviolet),
      m_records(std::move(records)),
      m_sums(m_records.periods.size() + 1) {
    m_records.metered.resize(m_records.periods.size());
}

std::optional<Light> DoseLedger::lightAt(int place, std::int64_t day) const {
    std::optional<Light> light;
    if (place >= 0)
        for (const LightPeriod& period : m_records.periods[static_cast<std::size_t>(place)])
            if (period.from <= day * minutesPerDay + minutesPerDay / 2)
                light = period.light;
    return light;
}

bool DoseLedger::wasMetered(int place, std::int64_t day) const {
    if (place < 0)
        return false;
    const CivilMinute begins = day * minutesPerDay;
    for (const MeteredSpan& span : m_records.metered[static_cast<std::size_t>(place)])
        if (span.from < begins + minutesPerDay && span.to > begins)
            return true;
    return false;
}

bool DoseLedger::isAlwaysDark(int place) const {
    if (place < 0)
        return false;
    const std::vector<LightPeriod>& periods = m_records.periods[static_cast<std::size_t>(place)];
    return !periods.empty() && periods.front().from == beginningOfTime &&
           m_records.metered[static_cast<std::size_t>(place)].empty() &&
           std::all_of(periods.begin(), periods.end(), [](const LightPeriod& period) {
               return period.light.lightKind == LightKind::dark;
           });
}

// Noon of mean solar time may lie hours from noon on the clock. East of the date line clocks stand
// a day ahead of the sun: the day's sun is the one that shines in it.
double DoseLedger::fallenBy(const std::optional<Light>& light, std::int64_t day,
                            CivilMinute minute) {
    const double ofDay_min = static_cast<double>(minute - day * minutesPerDay);
    const auto whole_min = static_cast<double>(minutesPerDay);
    // Whatever the sun does about midnight, the day's light has fallen when the day is over. Lamps
    // go by the clock.
    if (ofDay_min <= 0 || ofDay_min >= whole_min)
        return ofDay_min <= 0 ? 0 : 1;
    if (light && light->lightKind == LightKind::artificial)
        return ofDay_min / whole_min;
    const double ahead_min =
        std::remainder(static_cast<double>(m_records.clocks.utcOf(minute) - minute) +
                           4 * m_ultraviolet.studio().longitude_deg,
                       whole_min);
    return m_ultraviolet.fallenBy(light, day, ofDay_min + ahead_min);
}

// What was metered, and of the rest of the day the estimate. Ultraviolet that was metered goes
// before light, and no minute counts twice.
LightDose DoseLedger::ofMeteredDay(int place, std::int64_t day, const std::optional<Light>& light) {
    const CivilMinute begins = day * minutesPerDay;
    std::array<bool, minutesPerDay> isTaken = {};
    LightDose metered;
    double seen = 0;
    for (const bool isUltraviolet : {true, false})
        for (const MeteredSpan& span : m_records.metered[static_cast<std::size_t>(place)]) {
            const CivilMinute from = std::max(span.from, begins);
            const CivilMinute to = std::min(span.to, begins + minutesPerDay);
            if (from >= to || span.nearUltraviolet_Whm2.has_value() != isUltraviolet)
                continue;
            const auto first = isTaken.begin() + (from - begins);
            const auto last = isTaken.begin() + (to - begins);
            const auto fresh_min = static_cast<double>(std::count(first, last, false));
            std::fill(first, last, true);
            const double part = fresh_min / static_cast<double>(span.to - span.from);
            metered = sumOf(metered, ofSpan(span, light, part));
            seen += span.seen * (fallenBy(light, day, to) - fallenBy(light, day, from)) *
                    fresh_min / static_cast<double>(to - from);
        }
    return sumOf(metered, scaled(m_ultraviolet.ofDay(light, day), std::clamp(1 - seen, 0.0, 1.0)));
}

LightDose DoseLedger::ofSpan(const MeteredSpan& span, const std::optional<Light>& light,
                             double part) {
    if (span.nearUltraviolet_Whm2)
        return m_ultraviolet.ofMetered(scaled(meteredSpread, *span.nearUltraviolet_Whm2 * part));
    return m_ultraviolet.ofExposure(light, *span.exposure_lxh * part);
}

LightDose DoseLedger::ofDay(int place, std::int64_t day) {
    const std::optional<Light> light = lightAt(place, day);
    return wasMetered(place, day) ? ofMeteredDay(place, day, light)
                                  : m_ultraviolet.ofDay(light, day);
}

const DoseLedger::PlaceSums& DoseLedger::sumsOf(int place, std::int64_t first, std::int64_t last) {
    PlaceSums& sums = m_sums[place < 0 ? m_sums.size() - 1 : static_cast<std::size_t>(place)];
    constexpr std::int64_t ahead_days = 400;
    if (sums.upTo.empty() || first < sums.firstDay) {
        const std::int64_t end =
            sums.upTo.empty()
                ? last
                : std::max(last, sums.firstDay + static_cast<std::int64_t>(sums.upTo.size()));
        sums.firstDay = first - ahead_days;
        sums.upTo.assign(1, {});
        last = end;
    }
    while (sums.firstDay + static_cast<std::int64_t>(sums.upTo.size()) <= last + 1) {
        const LightDose dose =
            ofDay(place, sums.firstDay + static_cast<std::int64_t>(sums.upTo.size()) - 1);
        const bool known = dose.sunnyDays.isKnown();
        const DaySum& before = sums.upTo.back();
        sums.upTo.push_back(
            {sumOf(before.dose, {knownPart(dose.nearUltraviolet_Whm2), knownPart(dose.sunnyDays)}),
             before.unknownDays + (known ? 0 : 1)});
    }
    return sums;
}

// All days before the minute, and the part of its own day that has passed. Of a day that is not
// known, any part makes the sum not known.
DoseLedger::DaySum DoseLedger::sumUpTo(int place, const PlaceSums& sums, CivilMinute minute) {
    const std::int64_t day = dayOf(minute);
    const auto position = static_cast<std::size_t>(day - sums.firstDay);
    const DaySum& before = sums.upTo[position];
    if (minute == day * minutesPerDay)
        return before;
    const DaySum& after = sums.upTo[position + 1];
    const double fallen = fallenBy(lightAt(place, day), day, minute);
    return {sumOf(before.dose, scaled(restOf(after.dose, before.dose), fallen)), after.unknownDays};
}

LightDose DoseLedger::at(int place, CivilMinute from, CivilMinute to) {
    if (from >= to || isAlwaysDark(place))
        return {};
    if (to >= endOfTime)
        throw std::invalid_argument("a dose up to a time without an end");
    const CivilMinute farthest = to - longest_days * minutesPerDay;
    const bool isOpen = from < farthest;
    from = std::max(from, farthest);
    const PlaceSums& sums = sumsOf(place, dayOf(from), dayOf(to));
    const DaySum until = sumUpTo(place, sums, to);
    const DaySum before = sumUpTo(place, sums, from);
    LightDose dose = restOf(until.dose, before.dose);
    const int unknownBefore =
        sums.upTo[static_cast<std::size_t>(dayOf(from) - sums.firstDay)].unknownDays;
    if (until.unknownDays > unknownBefore)
        dose.nearUltraviolet_Whm2.best = dose.sunnyDays.best = notKnown;
    if (isOpen && dose.nearUltraviolet_Whm2.high > 0)
        dose.nearUltraviolet_Whm2.high = dose.sunnyDays.high =
            std::numeric_limits<double>::infinity();
    return dose;
}

LightDose DoseLedger::ofStay(const Stay& stay, const TimeSpan& from, const TimeSpan& to,
                             CivilMinute asOf) {
    if (stay.interleaved)
        return {};
    const bool isExact = from.earliest == from.latest && to.earliest == to.latest;
    const LightDose most = at(stay.place, from.earliest, to.latest);
    if (isExact && !stay.undecided)
        return most;
    const LightDose best = at(stay.place, within(middleOf(from), from.earliest, asOf),
                              within(middleOf(to), from.earliest, asOf));
    LightDose its = bracket(stay.undecided ? LightDose{} : at(stay.place, from.latest, to.earliest),
                            best, most);
    if (stay.undecided)
        its.nearUltraviolet_Whm2.best = its.sunnyDays.best = notKnown;
    return its;
}

// Calls visit(stay) for every stay after the pull, and for every time of which nobody knows where
// it was: until the first stay, and between one and the next.
template <class Visit>
LightDose DoseLedger::passStays(const std::vector<Stay>& stays, const TimeSpan& pulled,
                                CivilMinute asOf, Visit&& visit) {
    LightDose all;
    const auto passGap = [&](const TimeSpan& left, const TimeSpan& came, bool follows) {
        const TimeSpan from{std::max(left.earliest, pulled.earliest),
                            std::max(left.latest, pulled.latest)};
        const TimeSpan to{std::min(came.earliest, asOf), std::min(came.latest, asOf)};
        // Days are taken as they follow each other; dates known less well may hide a gap.
        const bool isCertain = from.latest < to.earliest;
        const bool mayBe = !follows && (isBadlyKnown(left) || isBadlyKnown(came));
        if (from.earliest >= to.latest || (!isCertain && !mayBe))
            return;
        const LightDose dose =
            bracket({}, at(-1, from.latest, to.earliest), at(-1, from.earliest, to.latest));
        all = sumOf(all, dose);
        visit(StayDose{-1, from, to, false, dose});
    };
    TimeSpan known = pulled;
    bool follows = false;
    for (const Stay& stay : stays) {
        passGap(known, stay.from, follows);
        known = stay.to;
        follows = stay.followed;
        if (std::min(stay.to.latest, asOf) <= pulled.earliest || stay.from.earliest >= asOf)
            continue;
        const TimeSpan from{std::max(stay.from.earliest, pulled.earliest),
                            std::max(stay.from.latest, pulled.latest)};
        const TimeSpan to{std::min(stay.to.earliest, asOf), std::min(stay.to.latest, asOf)};
        const LightDose dose = ofStay(stay, from, to, asOf);
        all = sumOf(all, dose);
        visit(StayDose{stay.place, from, to, stay.interleaved, dose});
    }
    passGap(known, {asOf, asOf}, false);
    return all;
}

LightDose DoseLedger::sumSince(const std::vector<Stay>& stays, const TimeSpan& pulled,
                               CivilMinute asOf) {
    return passStays(stays, pulled, asOf, [](const StayDose&) {});
}

DoseSince DoseLedger::since(const std::vector<Stay>& stays, const TimeSpan& pulled,
                            CivilMinute asOf) {
    DoseSince had;
    had.dose =
        passStays(stays, pulled, asOf, [&](const StayDose& stay) { had.stays.push_back(stay); });
    return had;
}

}  // namespace rackbook
