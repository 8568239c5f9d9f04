// What clock a logger goes by.
#pragma once

#include <string>

namespace rackbook {

class LogClock {
public:
    enum class Kind { wall, fixed, written };

    // The wall clock at an IANA time zone, with its summer time.
    static LogClock onWall(std::string timeZone);
    // Always as many minutes east of UTC: −1080 … 1080. Throws InputError outside.
    static LogClock atShift(int shift_min);
    // Each time has its own shift behind it.
    static LogClock asWritten() { return LogClock(Kind::written); }

    Kind kind() const { return m_kind; }
    const std::string& timeZone() const { return m_timeZone; }  // of wall clocks
    int shift_min() const { return m_shift_min; }               // of fixed ones

private:
    explicit LogClock(Kind kind) : m_kind(kind) {}

    Kind m_kind;
    std::string m_timeZone;
    int m_shift_min = 0;
};

}  // namespace rackbook
