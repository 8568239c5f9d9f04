#include "calc/LightDays.h"

#include <algorithm>

namespace rackbook {

namespace {

// Calls visit(state, from, to) for each stretch of one light within from … to.
template <class Visit>
void eachStretch(const PlaceLight& light, int place, CivilMinute from, CivilMinute to,
                 Visit&& visit) {
    const LightSegment* end = light.end(place);
    for (const LightSegment* s = light.begin(place); s != end; ++s) {
        const CivilMinute first = std::max(from, s->from);
        const CivilMinute last = s + 1 == end ? to : std::min(to, (s + 1)->from);
        if (first < last)
            visit(s->state, first, last);
    }
}

}  // namespace

void LightDays::raiseHigh(CivilMinute from, CivilMinute to) {
    from = std::max(from, m_highCursor);
    if (from >= to)
        return;
    m_high_min += to - from;
    m_highCursor = to;
}

void LightDays::passUnknown(const TimeSpan& from, const TimeSpan& to) {
    const CivilMinute certainFrom = std::max(from.latest, m_pulled.latest);
    const CivilMinute certainTo = std::min(to.earliest, m_asOf);
    m_lost_min += std::max<CivilMinute>(0, certainTo - certainFrom);
    raiseHigh(from.earliest, std::min(to.latest, m_asOf));
    m_litBefore = -1;
}

void LightDays::passStay(const Stay& stay) {
    if (stay.place < 0 || stay.undecided) {
        passUnknown(stay.from, stay.to);
        return;
    }
    if (!stay.interleaved) {
        countLow(stay);
        countHigh(stay);
    }
    m_litBefore = stay.followed && !stay.interleaved ? stay.place : -1;
}

// When a badly dated move leads from light to light, it was in light all the while.
void LightDays::countLow(const Stay& stay) {
    const bool litAcross =
        m_litBefore >= 0 &&
        m_light.isLitThroughout(m_litBefore, stay.from.earliest, stay.from.latest) &&
        m_light.isLitThroughout(stay.place, stay.from.earliest, stay.from.latest);
    const CivilMinute begun =
        litAcross ? std::max(stay.from.earliest, m_begunBefore) : stay.from.latest;
    m_begunBefore = begun;
    eachStretch(m_light, stay.place, std::max(begun, m_pulled.latest),
                std::min(stay.to.earliest, m_asOf),
                [&](LightState state, CivilMinute from, CivilMinute to) {
                    if (state == LightState::lit)
                        m_low_min += to - from;
                    else if (state == LightState::artificial)
                        m_artificial_min += to - from;
                });
}

void LightDays::countHigh(const Stay& stay) {
    eachStretch(m_light, stay.place, std::max(stay.from.earliest, m_pulled.earliest),
                std::min(stay.to.latest, m_asOf),
                [&](LightState state, CivilMinute from, CivilMinute to) {
                    if (countsAsDark(state))
                        return;
                    raiseHigh(from, to);
                    if (state == LightState::unstated) {
                        m_unlit_min += to - from;
                        m_unlitPlace = stay.place;
                    }
                });
}

}  // namespace rackbook
