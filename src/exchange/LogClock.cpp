#include "exchange/LogClock.h"

#include <utility>

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr int farthestShift_min = 18 * 60;

}  // namespace

LogClock LogClock::onWall(std::string timeZone) {
    LogClock clock(Kind::wall);
    clock.m_timeZone = std::move(timeZone);
    return clock;
}

LogClock LogClock::atShift(int shift_min) {
    if (shift_min < -farthestShift_min || shift_min > farthestShift_min)
        throw InputError("clock of the logger",
                         "the shift from UTC is " + std::to_string(shift_min) + " min",
                         "Give -1080 to 1080.");
    LogClock clock(Kind::fixed);
    clock.m_shift_min = shift_min;
    return clock;
}

}  // namespace rackbook
