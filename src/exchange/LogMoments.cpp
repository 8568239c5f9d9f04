#include "exchange/LogMoments.h"

#include <algorithm>
#include <limits>
#include <map>

#include "base/Clock.h"
#include "exchange/LightLog.h"

namespace rackbook {

namespace {

constexpr std::int64_t ms_min = 60'000;
constexpr std::int64_t day_ms = minutesPerDay * ms_min;

std::int64_t floorMinute(std::int64_t clock_ms) {
    return clock_ms / ms_min - (clock_ms % ms_min < 0 ? 1 : 0);
}

// shiftsShowing_min, asked three times a day and not for each minute.
class ShiftsOfDays {
public:
    explicit ShiftsOfDays(const std::string& timeZone) : m_timeZone(timeZone) {}

    std::vector<int> at(CivilMinute civil) {
        const std::int64_t day = dayOf(civil);
        const auto [place, isNew] = m_ofDay.try_emplace(day);
        if (isNew)
            place->second = shiftOfWholeDay(day);
        return place->second ? std::vector{*place->second} : shiftsShowing_min(civil, m_timeZone);
    }

private:
    // Nothing where the clocks may have been changed on the day; they are not changed twice
    // between the noons around it.
    std::optional<int> shiftOfWholeDay(std::int64_t day) const {
        std::optional<int> shift_min;
        for (const double noon : {-0.5, 1.5}) {
            const auto minute = static_cast<CivilMinute>((static_cast<double>(day) + noon) *
                                                         static_cast<double>(minutesPerDay));
            const std::vector<int> shifts = shiftsShowing_min(minute, m_timeZone);
            if (shifts.size() != 1 || shifts[0] != shift_min.value_or(shifts[0]))
                return std::nullopt;
            shift_min = shifts[0];
        }
        return shift_min;
    }

    const std::string& m_timeZone;
    std::map<std::int64_t, std::optional<int>> m_ofDay;
};

class WallReader {
public:
    WallReader(std::vector<LogLine>& lines, const std::string& timeZone, LogFindings& findings)
        : m_lines(lines), m_findings(findings) {
        std::vector<std::int64_t> times_ms;
        ShiftsOfDays shifts(timeZone);
        for (const LogLine& line : lines) {
            times_ms.push_back(line.time.clock_ms);
            m_shifts.push_back(shifts.at(floorMinute(line.time.clock_ms)));
        }
        if (const auto step_ms = medianStep_ms(times_ms))
            m_longest_ms = *step_ms * gapSteps;
    }

    void read() {
        for (std::size_t i = 0; i < m_lines.size(); ++i)
            if (m_shifts[i].size() == 1)
                m_lines[i].utc_ms = clock_ms(i) - m_shifts[i][0] * ms_min;
        for (std::size_t begin = 0; begin < m_lines.size();) {
            const std::size_t end = endOfNight(begin);
            if (m_shifts[begin].empty())
                refuseNight(begin, end);
            else if (m_shifts[begin].size() == 2)
                settleNight(begin, end);
            begin = end;
        }
    }

private:
    std::int64_t clock_ms(std::size_t i) const { return m_lines[i].time.clock_ms; }
    bool isStep(std::int64_t from_ms, std::int64_t to_ms) const {
        return to_ms > from_ms && to_ms - from_ms <= m_longest_ms;
    }

    // Behind the last of the lines that lie in the same hour that came twice, or never.
    std::size_t endOfNight(std::size_t begin) const {
        std::size_t end = begin + 1;
        while (end < m_lines.size() && m_shifts[end].size() != 1 &&
               m_shifts[end] == m_shifts[begin] &&
               std::abs(clock_ms(end) - clock_ms(begin)) < day_ms)
            ++end;
        return end;
    }

    // Where the hour is read so that its first `count` lines are in its first round.
    std::int64_t read_ms(std::size_t begin, std::size_t i, std::size_t count) const {
        return clock_ms(i) - m_shifts[i][i - begin < count ? 0 : 1] * ms_min;
    }

    // Whether time goes on evenly from the line before the hour, over its change of rounds, to the
    // line behind.
    bool joinsEvenly(std::size_t begin, std::size_t end, std::size_t count) const {
        const std::size_t turn = begin + count;
        if (begin > 0 && m_lines[begin - 1].utc_ms &&
            !isStep(*m_lines[begin - 1].utc_ms, read_ms(begin, begin, count)))
            return false;
        if (end < m_lines.size() && m_lines[end].utc_ms &&
            !isStep(read_ms(begin, end - 1, count), *m_lines[end].utc_ms))
            return false;
        return turn == begin || turn == end ||
               isStep(read_ms(begin, turn - 1, count), read_ms(begin, turn, count));
    }

    void settleNight(std::size_t begin, std::size_t end) {
        std::vector<std::size_t> uneven;  // lines that do not follow on the one before
        for (std::size_t i = begin + 1; i < end; ++i)
            if (!isStep(clock_ms(i - 1), clock_ms(i)))
                uneven.push_back(i - begin);
        std::vector<std::size_t> readings;
        for (std::size_t count = 0; count <= end - begin && uneven.size() <= 1; ++count)
            if ((uneven.empty() || uneven[0] == count) && joinsEvenly(begin, end, count))
                readings.push_back(count);
        if (readings.size() == 1) {
            for (std::size_t i = begin; i < end; ++i)
                m_lines[i].utc_ms = read_ms(begin, i, readings[0]);
            return;
        }
        m_findings.refuse({m_lines[begin].line, {}},
                          "the clock was put back and showed " + timesOf(begin, end) +
                              " twice, and the order of the lines does not tell which it is",
                          "Give the log with times in UTC or with their shift, or leave these "
                          "lines out.",
                          m_lines[begin].timeText);
    }

    void refuseNight(std::size_t begin, std::size_t end) {
        m_findings.refuse({m_lines[begin].line, {}},
                          "the wall clock was put forward and never showed " + timesOf(begin, end),
                          "Where the logger's clock has no summer time, say its shift from UTC.",
                          m_lines[begin].timeText);
    }

    std::string timesOf(std::size_t begin, std::size_t end) const {
        return end - begin == 1
                   ? "this time"
                   : "the times from here to line " + std::to_string(m_lines[end - 1].line);
    }

    std::vector<LogLine>& m_lines;
    LogFindings& m_findings;
    std::vector<std::vector<int>> m_shifts;  // that showed each line's time
    std::int64_t m_longest_ms = std::numeric_limits<std::int64_t>::max();
};

// Whether all lines are as wanted; those that are not are refused.
bool haveShifts(const std::vector<LogLine>& lines, bool wanted, LogFindings& findings) {
    bool isWell = true;
    for (const LogLine& line : lines) {
        isWell = isWell && line.time.shift_min.has_value() == wanted;
        if (line.time.shift_min && !wanted)
            findings.refuse({line.line, {}}, "the time has its own shift from UTC",
                            "Say that times have their own, or take it out.", line.timeText);
        else if (!line.time.shift_min && wanted)
            findings.refuse({line.line, {}}, "the time has no shift from UTC",
                            "Write one behind it, as +01:00 or Z, or say what clock it is.",
                            line.timeText);
    }
    return isWell;
}

}  // namespace

std::optional<std::int64_t> medianStep_ms(const std::vector<std::int64_t>& times_ms) {
    std::vector<std::int64_t> steps_ms;
    for (std::size_t i = 1; i < times_ms.size(); ++i)
        if (times_ms[i] > times_ms[i - 1])
            steps_ms.push_back(times_ms[i] - times_ms[i - 1]);
    if (steps_ms.empty())
        return std::nullopt;
    const auto middle = steps_ms.begin() + static_cast<std::ptrdiff_t>((steps_ms.size() - 1) / 2);
    std::nth_element(steps_ms.begin(), middle, steps_ms.end());
    return *middle;
}

void findMoments(std::vector<LogLine>& lines, const LogClock& clock, LogFindings& findings) {
    const bool isWritten = clock.kind() == LogClock::Kind::written;
    if (!haveShifts(lines, isWritten, findings))
        return;
    if (clock.kind() == LogClock::Kind::wall) {
        WallReader(lines, clock.timeZone(), findings).read();
        return;
    }
    for (LogLine& line : lines) {
        const int shift_min = isWritten ? *line.time.shift_min : clock.shift_min();
        line.utc_ms = line.time.clock_ms - shift_min * ms_min;
    }
}

}  // namespace rackbook
