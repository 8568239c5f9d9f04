// The light at every place over time, with the place tree resolved: a place with no entries of its
// own has the light of the place around it, but a drawer or a box is dark.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "records/History.h"

namespace rackbook {

// Daylight, outdoors and metered light are lit.
enum class LightState : std::uint8_t { unstated, dark, artificial, lit };

constexpr bool countsAsDark(LightState state) {
    return state == LightState::dark || state == LightState::artificial;
}

struct LightSegment {
    CivilMinute from = beginningOfTime;  // until the next segment
    LightState state = LightState::unstated;
};

class PlaceLight {
public:
    // Where the day of a change is badly known, what the light was in between is not known, unless
    // it was of the same kind before and after.
    explicit PlaceLight(const History& history);

    // In the order of time, the first from the beginning of time; the last lasts for ever.
    const LightSegment* begin(int place) const;
    const LightSegment* end(int place) const;

    LightState at(int place, CivilMinute minute) const;
    bool isLitThroughout(int place, CivilMinute from, CivilMinute to) const;

    // A gallery or a holder's place, or within one.
    bool isOutOfHands(int place) const;

private:
    struct Range {
        std::size_t begin = 0;
        std::size_t end = 0;
    };

    void addSegments(std::vector<HistoryLight> entries);

    std::vector<LightSegment> m_segments;
    std::vector<Range> m_rangeOf;  // by place
    std::vector<char> m_isOutOfHands;
};

}  // namespace rackbook
