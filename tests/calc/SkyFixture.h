// Instants for tests of sun and sky, and what they ask of every estimate.
#pragma once

#include <gtest/gtest.h>

#include <cstdio>
#include <stdexcept>
#include <string>

#include "base/CivilTime.h"
#include "calc/Estimate.h"
#include "calc/SunPosition.h"

namespace rackbook::test {

// "2026-03-20T12:00:00Z"
inline UtcTime utc(const std::string& text) {
    int year = 0;
    int month = 0;
    int day = 0;
    int hour = 0;
    int minute = 0;
    int second = 0;
    if (std::sscanf(text.c_str(), "%d-%d-%dT%d:%d:%dZ", &year, &month, &day, &hour, &minute,
                    &second) != 6)
        throw std::runtime_error("not an instant: " + text);
    const auto days = static_cast<double>(daysFromCivil({year, month, day}));
    return {days * static_cast<double>(minutesPerDay) + hour * 60.0 + minute + second / 60.0};
}

inline UtcTime later(const UtcTime& time, double minutes) {
    return {time.minutes + minutes};
}

inline void expectOrdered(const Estimate& estimate) {
    EXPECT_LE(estimate.low, estimate.best);
    EXPECT_LE(estimate.best, estimate.high);
    EXPECT_GE(estimate.low, 0);
}

}  // namespace rackbook::test
