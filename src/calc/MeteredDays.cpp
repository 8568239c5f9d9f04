#include "calc/MeteredDays.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/CompensatedSum.h"

namespace rackbook {

namespace {

constexpr double minutesPerHour = 60;
// Far beyond any clock; within it a minute has room for its fractions.
constexpr double farthest_min = 10'000 * 366.0 * minutesPerDay;

void refuse(const std::string& what, const std::string& remedy) {
    throw InputError("metered light", what, remedy);
}

void requireSound(const std::vector<MeteredMoment>& moments, double largestStep_min) {
    if (!(largestStep_min > 0) || !std::isfinite(largestStep_min))
        refuse("the largest step is " + formatShortest(largestStep_min) + " min",
               "Give one above 0.");
    for (std::size_t i = 0; i < moments.size(); ++i) {
        const std::string name = "moment " + std::to_string(i + 1);
        if (!(std::fabs(moments[i].utc_min) <= farthest_min))
            refuse(name + " has no time that could be", "Give minutes since 1970.");
        if (!(moments[i].value >= 0) || !std::isfinite(moments[i].value))
            refuse(name + " has the value " + formatShortest(moments[i].value), "Give 0 or more.");
        if (i > 0 && moments[i].utc_min <= moments[i - 1].utc_min)
            refuse(name + " is not later than the one before it", "Give them in order.");
    }
}

class DaySums {
public:
    explicit DaySums(const WallClockAt& wallClockAt) : m_wallClockAt(wallClockAt) {}

    void addMoment(double utc_min) { sumOf(dayAt(utc_min), utc_min, utc_min); }

    // Parted at every midnight between the two.
    void addStep(const MeteredMoment& from, const MeteredMoment& to) {
        MeteredMoment begin = from;
        std::int64_t day = dayAt(begin.utc_min);
        // The last moment itself belongs to the next step.
        const auto last = static_cast<std::int64_t>(std::ceil(to.utc_min)) - 1;
        while (dayAt(last) > day) {
            const std::int64_t midnight = nextDayAt(begin.utc_min, last, day);
            const auto at = static_cast<double>(midnight);
            const double share = (at - from.utc_min) / (to.utc_min - from.utc_min);
            const MeteredMoment end{at, from.value + share * (to.value - from.value)};
            addWithin(day, begin, end);
            begin = end;
            day = dayAt(midnight);
        }
        addWithin(day, begin, to);
    }

    std::vector<MeteredDay> days() const {
        std::vector<MeteredDay> all;
        for (const auto& [day, sum] : m_sums)
            all.push_back(
                {day, sum.exposure_h.value(), sum.covered_h.value(), sum.first_min, sum.last_min});
        return all;
    }

private:
    struct Sum {
        CompensatedSum exposure_h;
        CompensatedSum covered_h;
        double first_min = 0;
        double last_min = 0;
    };

    std::int64_t dayAt(std::int64_t utc_min) const { return dayOf(m_wallClockAt(utc_min)); }
    std::int64_t dayAt(double utc_min) const {
        return dayAt(static_cast<std::int64_t>(std::floor(utc_min)));
    }

    // The first whole minute of a later day than `day`. Pre: it is `day` at `from` and later at
    // `to`.
    std::int64_t nextDayAt(double from, std::int64_t to, std::int64_t day) const {
        auto before = static_cast<std::int64_t>(std::floor(from));
        std::int64_t after = to;
        while (after - before > 1) {
            const std::int64_t middle = before + (after - before) / 2;
            (dayAt(middle) > day ? after : before) = middle;
        }
        return after;
    }

    Sum& sumOf(std::int64_t day, double first_min, double last_min) {
        const auto [place, isNew] = m_sums.try_emplace(day);
        Sum& sum = place->second;
        sum.first_min = isNew ? first_min : std::min(sum.first_min, first_min);
        sum.last_min = isNew ? last_min : std::max(sum.last_min, last_min);
        return sum;
    }

    void addWithin(std::int64_t day, const MeteredMoment& from, const MeteredMoment& to) {
        const double hours = (to.utc_min - from.utc_min) / minutesPerHour;
        Sum& sum = sumOf(day, from.utc_min, to.utc_min);
        // Halved first, so that the sum of two great values stays finite.
        sum.exposure_h.add((from.value / 2 + to.value / 2) * hours);
        sum.covered_h.add(hours);
    }

    const WallClockAt& m_wallClockAt;
    std::map<std::int64_t, Sum> m_sums;
};

}  // namespace

std::vector<MeteredDay> meteredDaysOf(const std::vector<MeteredMoment>& moments,
                                      double largestStep_min, const WallClockAt& wallClockAt) {
    requireSound(moments, largestStep_min);
    DaySums sums(wallClockAt);
    const auto isSeen = [&](std::size_t i) {
        return i > 0 && i < moments.size() &&
               moments[i].utc_min - moments[i - 1].utc_min <= largestStep_min;
    };
    for (std::size_t i = 0; i < moments.size(); ++i)
        if (isSeen(i))
            sums.addStep(moments[i - 1], moments[i]);
        else if (!isSeen(i + 1))
            sums.addMoment(moments[i].utc_min);
    return sums.days();
}

}  // namespace rackbook
