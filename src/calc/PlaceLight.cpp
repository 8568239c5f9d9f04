#include "calc/PlaceLight.h"

#include <algorithm>

namespace rackbook {

namespace {

LightState stateOf(LightKind kind) {
    switch (kind) {
        case LightKind::dark:
            return LightState::dark;
        case LightKind::artificial:
            return LightState::artificial;
        case LightKind::daylight:
        case LightKind::outdoors:
        case LightKind::metered:
            break;
    }
    return LightState::lit;
}

LightState either(LightState a, LightState b) {
    if (a == b)
        return a;
    return countsAsDark(a) && countsAsDark(b) ? LightState::dark : LightState::unstated;
}

// Calls visit(place) for the place and those around it until visit says true; a ring in the tree
// ends the climb.
template <class Visit>
void climb(const History& history, std::size_t place, Visit&& visit) {
    for (std::size_t steps = 0; steps <= history.places.size(); ++steps) {
        if (visit(history.places[place]) || history.places[place].within < 0)
            return;
        place = static_cast<std::size_t>(history.places[place].within);
    }
}

std::vector<HistoryLight> lightOf(const History& history, std::size_t place) {
    std::vector<HistoryLight> entries;
    climb(history, place, [&](const HistoryPlace& around) {
        for (std::size_t i = around.lightBegin; i < around.lightEnd; ++i)
            entries.push_back(history.light[i]);
        const bool closed =
            around.placeKind == PlaceKind::drawer || around.placeKind == PlaceKind::box;
        if (entries.empty() && closed)
            entries.push_back({{beginningOfTime, beginningOfTime}, LightKind::dark});
        return !entries.empty();
    });
    return entries;
}

bool isOut(const History& history, std::size_t place) {
    bool out = false;
    climb(history, place, [&](const HistoryPlace& around) {
        out = around.atHolder || around.placeKind == PlaceKind::gallery ||
              around.placeKind == PlaceKind::holderAddress;
        return out;
    });
    return out;
}

}  // namespace

PlaceLight::PlaceLight(const History& history) {
    for (std::size_t place = 0; place < history.places.size(); ++place) {
        const std::size_t begin = m_segments.size();
        addSegments(lightOf(history, place));
        m_rangeOf.push_back({begin, m_segments.size()});
        m_isOutOfHands.push_back(isOut(history, place) ? 1 : 0);
    }
}

void PlaceLight::addSegments(std::vector<HistoryLight> entries) {
    std::stable_sort(entries.begin(), entries.end(),
                     [](const HistoryLight& a, const HistoryLight& b) {
                         return a.from.earliest < b.from.earliest;
                     });
    LightState state = LightState::unstated;
    m_segments.push_back({beginningOfTime, state});
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const TimeSpan& from = entries[i].from;
        const LightState next = stateOf(entries[i].lightKind);
        if (from.earliest < from.latest) {
            state = either(state, next);
            m_segments.push_back({from.earliest, state});
        }
        const bool overtaken = i + 1 < entries.size() && entries[i + 1].from.earliest < from.latest;
        if (overtaken)
            continue;
        state = next;
        m_segments.push_back({from.latest, state});
    }
}

const LightSegment* PlaceLight::begin(int place) const {
    return m_segments.data() + m_rangeOf[static_cast<std::size_t>(place)].begin;
}

const LightSegment* PlaceLight::end(int place) const {
    return m_segments.data() + m_rangeOf[static_cast<std::size_t>(place)].end;
}

LightState PlaceLight::at(int place, CivilMinute minute) const {
    LightState state = LightState::unstated;
    for (const LightSegment* s = begin(place); s != end(place) && s->from <= minute; ++s)
        state = s->state;
    return state;
}

bool PlaceLight::isLitThroughout(int place, CivilMinute from, CivilMinute to) const {
    if (at(place, from) != LightState::lit)
        return false;
    for (const LightSegment* s = begin(place); s != end(place); ++s)
        if (s->from > from && s->from <= to && s->state != LightState::lit)
            return false;
    return true;
}

bool PlaceLight::isOutOfHands(int place) const {
    return m_isOutOfHands[static_cast<std::size_t>(place)] != 0;
}

}  // namespace rackbook
