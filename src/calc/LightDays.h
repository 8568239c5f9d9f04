// Days in light since a pull, counted along the stays of an impression.
#pragma once

#include "calc/PlaceLight.h"
#include "calc/Stays.h"

namespace rackbook {

// Counts time from `pulled` on: the low bound takes what was certainly lit, the high bound all
// that can have been. Stays are given one after the other, in order.
class LightDays {
public:
    LightDays(const PlaceLight& light, const TimeSpan& pulled, CivilMinute asOf)
        : m_light(light), m_pulled(pulled), m_asOf(asOf), m_highCursor(pulled.earliest) {}

    // Time for which no move says where the impression was.
    void passUnknown(const TimeSpan& from, const TimeSpan& to);
    void passStay(const Stay& stay);

    double low() const { return inDays(m_low_min); }
    double high() const { return inDays(m_high_min); }

    // What widens the bounds by more than a day.
    bool lostWhereabouts() const { return m_lost_min > minutesPerDay; }
    bool unlit() const { return m_unlit_min > minutesPerDay; }
    int unlitPlace() const { return m_unlitPlace; }
    bool sawArtificial() const { return m_artificial_min > 0; }

private:
    static double inDays(CivilMinute minutes) {
        return static_cast<double>(minutes) / static_cast<double>(minutesPerDay);
    }
    void countLow(const Stay& stay);
    void countHigh(const Stay& stay);
    void raiseHigh(CivilMinute from, CivilMinute to);

    const PlaceLight& m_light;
    TimeSpan m_pulled;
    CivilMinute m_asOf;
    CivilMinute m_highCursor;  // the high bound has counted up to here
    CivilMinute m_low_min = 0;
    CivilMinute m_high_min = 0;
    CivilMinute m_lost_min = 0;
    CivilMinute m_unlit_min = 0;
    CivilMinute m_artificial_min = 0;
    int m_unlitPlace = -1;
    int m_litBefore = -1;  // place of the stay before, where it led on to this one, face open
    CivilMinute m_begunBefore = 0;  // from when on that stay is certain
};

}  // namespace rackbook
