#include "calc/PlaceLightOverTime.h"

#include <algorithm>
#include <string>
#include <unordered_map>

namespace rackbook {

namespace {

using PlacePositions = std::unordered_map<std::string, std::size_t>;

PlacePositions positionsOf(const std::vector<Place>& places) {
    PlacePositions positions;
    for (std::size_t i = 0; i < places.size(); ++i)
        positions.emplace(places[i].id, i);
    return positions;
}

std::vector<LightPeriod> ownPeriods(const Place& place) {
    std::vector<LightPeriod> periods;
    for (const Light& light : place.light)
        periods.push_back({light.from ? light.from->earliest() : beginningOfTime, light});
    std::stable_sort(periods.begin(), periods.end(),
                     [](const LightPeriod& a, const LightPeriod& b) { return a.from < b.from; });
    const bool closed = place.placeKind == PlaceKind::drawer || place.placeKind == PlaceKind::box;
    if (periods.empty() && closed)
        periods.push_back({beginningOfTime, Light{}});
    return periods;
}

// Calls visit(position) for the place and those around it until visit says true; a ring of places
// within one another ends the climb.
template <class Visit>
void climb(const std::vector<Place>& places, const PlacePositions& positions, std::size_t at,
           Visit&& visit) {
    for (std::size_t steps = 0; steps <= places.size(); ++steps) {
        if (visit(at) || !places[at].within)
            return;
        const auto around = positions.find(places[at].within->id);
        if (around == positions.end())
            return;
        at = around->second;
    }
}

MeteredSpan spanOf(const Metering& metering) {
    MeteredSpan span;
    span.from = metering.from.earliest();
    span.to = metering.to.latest();
    const double length_h = static_cast<double>(span.to - span.from) / 60;
    if (metering.covered_h && length_h > 0)
        span.seen = std::min(1.0, *metering.covered_h / length_h);
    span.nearUltraviolet_Whm2 = metering.nearUltraviolet_Whm2;
    span.exposure_lxh = metering.exposure_lxh;
    return span;
}

template <class IsWanted>
bool isThroughout(const std::vector<LightPeriod>& periods, CivilMinute from, CivilMinute to,
                  IsWanted&& isWanted) {
    bool isSo = false;  // up to the first entry nothing is known
    for (const LightPeriod& period : periods) {
        if (period.from >= to)
            break;
        if (period.from > from && !isSo)
            return false;
        isSo = isWanted(period.light.lightKind);
    }
    return isSo;
}

}  // namespace

std::vector<std::vector<LightPeriod>> lightPeriodsOf(const std::vector<Place>& places) {
    const PlacePositions positions = positionsOf(places);
    std::vector<std::vector<LightPeriod>> periods(places.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        climb(places, positions, i, [&](std::size_t at) {
            periods[i] = ownPeriods(places[at]);
            return !periods[i].empty();
        });
    return periods;
}

bool isDarkThroughout(const std::vector<LightPeriod>& periods, CivilMinute from, CivilMinute to) {
    return isThroughout(periods, from, to, [](LightKind kind) { return kind == LightKind::dark; });
}

bool isDaylitThroughout(const std::vector<LightPeriod>& periods, CivilMinute from, CivilMinute to) {
    return isThroughout(periods, from, to, [](LightKind kind) {
        return kind == LightKind::daylight || kind == LightKind::outdoors;
    });
}

std::vector<std::vector<MeteredSpan>> meteredSpansOf(const std::vector<Place>& places,
                                                     const std::vector<Metering>& meterings) {
    const PlacePositions positions = positionsOf(places);
    std::vector<std::vector<MeteredSpan>> own(places.size());
    for (const Metering& metering : meterings)
        if (const auto place = positions.find(metering.place.id); place != positions.end())
            own[place->second].push_back(spanOf(metering));
    for (std::vector<MeteredSpan>& spans : own)
        std::stable_sort(
            spans.begin(), spans.end(),
            [](const MeteredSpan& a, const MeteredSpan& b) { return a.from < b.from; });
    std::vector<std::vector<MeteredSpan>> spans(places.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        climb(places, positions, i, [&](std::size_t at) {
            spans[i] = own[at];
            return !spans[i].empty() || !ownPeriods(places[at]).empty();
        });
    return spans;
}

}  // namespace rackbook
