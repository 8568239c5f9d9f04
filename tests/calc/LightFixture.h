// Places and questions for tests of doses of light.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "base/Clock.h"
#include "calc/DoseLedger.h"

namespace rackbook::test {

inline Skies usualSkies() {
    Skies skies;
    skies.usual = {0.3, 0.35};
    return skies;
}

inline Light lightOf(LightKind kind) {
    Light light;
    light.lightKind = kind;
    return light;
}

inline Light daylightOf(double daylightFactor_pct) {
    Light light = lightOf(LightKind::daylight);
    light.daylightFactor_pct = daylightFactor_pct;
    light.directSun = false;
    light.glass = Glass::clearSingle;
    return light;
}

// Places that had one light since always.
inline PlaceRecords placesWith(const std::vector<Light>& lights, const std::string& timeZone) {
    PlaceRecords records;
    for (const Light& light : lights)
        records.periods.push_back({LightPeriod{beginningOfTime, light}});
    records.clocks = zoneShiftsOf(timeZone);
    return records;
}

// "2026-03-20T12:00" on the studio's clock.
inline CivilMinute at(const std::string& text) {
    return EdtfDate::parse(text).earliest();
}

inline TimeSpan exactly(CivilMinute minute) {
    return {minute, minute};
}

inline Stay stayAt(int place, const TimeSpan& from, const TimeSpan& to) {
    Stay stay;
    stay.place = place;
    stay.from = from;
    stay.to = to;
    stay.followed = true;
    return stay;
}

}  // namespace rackbook::test
