#include "calc/DoseLedger.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

std::vector<LightPeriod> ownPeriods(const Place& place) {
    std::vector<LightPeriod> periods;
    for (const Light& light : place.light)
        periods.push_back({light.from ? light.from->earliest() : beginningOfTime, light});
    std::stable_sort(periods.begin(), periods.end(),
                     [](const LightPeriod& a, const LightPeriod& b) { return a.from < b.from; });
    return periods;
}

CivilMinute middleOf(const TimeSpan& span) {
    if (span.earliest <= beginningOfTime || span.latest >= endOfTime)
        return span.latest >= endOfTime ? span.earliest : span.latest;
    return span.earliest + (span.latest - span.earliest) / 2;
}

CivilMinute within(CivilMinute minute, CivilMinute from, CivilMinute to) {
    return std::clamp(minute, from, std::max(from, to));
}

}  // namespace

std::vector<std::vector<LightPeriod>> lightPeriodsOf(const std::vector<Place>& places) {
    std::unordered_map<std::string, std::size_t> positions;
    for (std::size_t i = 0; i < places.size(); ++i)
        positions.emplace(places[i].id, i);
    std::vector<std::vector<LightPeriod>> periods;
    for (std::size_t i = 0; i < places.size(); ++i) {
        std::vector<LightPeriod> found;
        std::size_t at = i;
        // A ring of places within one another ends the climb.
        for (std::size_t steps = 0; steps <= places.size(); ++steps) {
            found = ownPeriods(places[at]);
            const bool closed =
                places[at].placeKind == PlaceKind::drawer || places[at].placeKind == PlaceKind::box;
            if (found.empty() && closed)
                found.push_back({beginningOfTime, Light{}});
            const auto around =
                places[at].within ? positions.find(places[at].within->id) : positions.end();
            if (!found.empty() || around == positions.end())
                break;
            at = around->second;
        }
        periods.push_back(std::move(found));
    }
    return periods;
}

Estimate DoseLedger::ofDay(int place, std::int64_t day) {
    const auto key = std::make_pair(place, day);
    const auto found = m_days.find(key);
    if (found != m_days.end())
        return found->second;
    std::optional<Light> light;
    if (place >= 0)
        for (const LightPeriod& period : m_periods[static_cast<std::size_t>(place)])
            if (period.from <= day * minutesPerDay + minutesPerDay / 2)
                light = period.light;
    const Estimate dose = m_ultraviolet.ofDay_Whm2(light, day);
    m_days.emplace(key, dose);
    return dose;
}

Estimate DoseLedger::at(int place, CivilMinute from, CivilMinute to) {
    Estimate sum = Estimate::exactly(0);
    while (from < to) {
        const std::int64_t day = dayOf(from);
        const CivilMinute until = std::min(to, (day + 1) * minutesPerDay);
        const double part = static_cast<double>(until - from) / static_cast<double>(minutesPerDay);
        const Estimate whole = ofDay(place, day);
        sum = sumOf(sum, {whole.low * part, whole.best * part, whole.high * part});
        from = until;
    }
    return sum;
}

StayDose DoseLedger::ofStay(const Stay& stay, const TimeSpan& pulled, CivilMinute asOf) {
    StayDose its{stay.place, stay.from, stay.to, stay.interleaved, Estimate::exactly(0)};
    its.from = {std::max(stay.from.earliest, pulled.earliest),
                std::max(stay.from.latest, pulled.latest)};
    its.to = {std::min(stay.to.earliest, asOf), std::min(stay.to.latest, asOf)};
    if (stay.interleaved)
        return its;
    const Estimate most = at(stay.place, its.from.earliest, its.to.latest);
    const Estimate best = at(stay.place, within(middleOf(its.from), its.from.earliest, asOf),
                             within(middleOf(its.to), its.from.earliest, asOf));
    const double low = stay.undecided ? 0 : at(stay.place, its.from.latest, its.to.earliest).low;
    its.dose_Whm2 = {low, stay.undecided ? notKnown : best.best, most.high};
    return its;
}

DoseSince DoseLedger::since(const std::vector<Stay>& stays, const TimeSpan& pulled,
                            CivilMinute asOf) {
    DoseSince all;
    // Until the first stay, and between one and the next, nobody knows where it was.
    const auto passGap = [&](const TimeSpan& from, const TimeSpan& to) {
        const CivilMinute first = std::max(from.latest, pulled.latest);
        const CivilMinute last = std::min(to.earliest, asOf);
        if (first >= last)
            return;
        StayDose gap{-1, {first, first}, {last, last}, false, at(-1, first, last)};
        all.dose_Whm2 = sumOf(all.dose_Whm2, gap.dose_Whm2);
        all.stays.push_back(gap);
    };
    TimeSpan known = pulled;
    for (const Stay& stay : stays) {
        passGap(known, stay.from);
        known = stay.to;
        if (std::min(stay.to.latest, asOf) <= pulled.earliest || stay.from.earliest >= asOf)
            continue;
        all.stays.push_back(ofStay(stay, pulled, asOf));
        all.dose_Whm2 = sumOf(all.dose_Whm2, all.stays.back().dose_Whm2);
    }
    passGap(known, {asOf, asOf});
    return all;
}

}  // namespace rackbook
