#include "commands/LightLogDays.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Error.h"
#include "calc/MeteredDays.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// More digits than any logger has.
constexpr double steps_lxh = 10;
constexpr double steps_Whm2 = 10'000;
constexpr double steps_h = 1'000;

double roundedTo(double value, double stepsOfOne) {
    return std::round(value * stepsOfOne) / stepsOfOne;
}

std::vector<MeteredMoment> momentsOf(const LightLog& log) {
    std::vector<MeteredMoment> moments;
    moments.reserve(log.samples.size());
    for (const LightSample& sample : log.samples)
        moments.push_back({sample.utc_min, sample.value});
    return moments;
}

bool isOfLight(const LightLog& log) {
    return log.quantity == LightQuantity::illuminance_lx;
}

// By day, the meterings of the same quantity at that place.
std::map<std::int64_t, std::string> meteredBefore(const BookFile& book, const LightLog& log,
                                                  const Place& place) {
    std::map<std::int64_t, std::string> days;
    for (const Metering& metering : allOf<Metering>(book)) {
        const bool isSame = isOfLight(log) ? metering.exposure_lxh.has_value()
                                           : metering.nearUltraviolet_Whm2.has_value();
        if (isSame && metering.place.id == place.id)
            for (std::int64_t day = dayOf(metering.from.earliest());
                 day <= dayOf(metering.to.latest() - 1); ++day)
                days.emplace(day, metering.id);
    }
    return days;
}

LoggedDay loggedDay(const MeteredDay& metered, const ZoneShifts& shifts) {
    constexpr double hair_h = 1e-6;
    const auto first = static_cast<CivilMinute>(std::floor(metered.firstSeen_utc_min));
    const auto last = static_cast<CivilMinute>(std::ceil(metered.lastSeen_utc_min));
    LoggedDay day;
    day.day = metered.day;
    day.from = shifts.civilOf(first);
    day.to = shifts.civilOf(last);
    day.covered_h = metered.covered_h;
    day.isSeenThrough =
        metered.covered_h + hair_h >= (metered.lastSeen_utc_min - metered.firstSeen_utc_min) / 60;
    day.exposure_h = metered.exposure_h;
    return day;
}

// A day seen through says so by leaving it out, also where the clocks were put on or back in it.
std::optional<double> coveredOf(const LoggedDay& day) {
    if (day.isSeenThrough)
        return std::nullopt;
    const double length_h = static_cast<double>(day.to - day.from) / 60;
    return std::clamp(roundedTo(day.covered_h, steps_h), 1 / steps_h, length_h);
}

void requireNoneMetered(const std::vector<LoggedDay>& days, const Place& place,
                        const std::string& file) {
    std::vector<Finding> findings;
    for (const LoggedDay& day : days) {
        if (day.meteredAs.empty() || day.hasNoSpan())
            continue;
        Finding finding;
        finding.rule = "light-log";
        finding.where.file = file;
        finding.what = formatDay(day.day * minutesPerDay) + " is metered at " + place.id +
                       " already, by metering " + day.meteredAs;
        finding.remedy =
            "Leave out days before another with --since, or strike the metering out first.";
        findings.push_back(std::move(finding));
    }
    if (!findings.empty())
        throw RefusedInput(std::move(findings));
}

}  // namespace

std::vector<LoggedDay> loggedDaysOf(const BookFile& book, const LightLog& log, const Place& place,
                                    const ZoneShifts& shifts, std::optional<std::int64_t> since) {
    const std::map<std::int64_t, std::string> before = meteredBefore(book, log, place);
    // A single reading has no step, and any will do.
    const double largestStep_min = std::max(1.0, gapSteps * log.usualStep_min);
    std::vector<LoggedDay> days;
    for (const MeteredDay& metered :
         meteredDaysOf(momentsOf(log), largestStep_min,
                       [&](std::int64_t utc_min) { return shifts.civilOf(utc_min); })) {
        if (since && metered.day < *since)
            continue;
        LoggedDay day = loggedDay(metered, shifts);
        day.id = "meter-" + place.id + "-" + formatDay(day.day * minutesPerDay) +
                 (isOfLight(log) ? "" : "-uva");
        if (const auto found = before.find(day.day); found != before.end())
            day.meteredAs = found->second;
        days.push_back(std::move(day));
    }
    return days;
}

std::vector<Metering> meteringsOfDays(const std::vector<LoggedDay>& days, const LightLog& log,
                                      const Place& place) {
    std::vector<Metering> meterings;
    for (const LoggedDay& day : days) {
        if (day.hasNoSpan())
            continue;
        Metering metering;
        metering.id = day.id;
        metering.place = {place.id};
        metering.from = EdtfDate::ofMinute(day.from);
        metering.to = EdtfDate::ofMinute(day.to);
        metering.covered_h = coveredOf(day);
        if (isOfLight(log))
            metering.exposure_lxh = roundedTo(day.exposure_h, steps_lxh);
        else
            metering.nearUltraviolet_Whm2 = roundedTo(day.exposure_h, steps_Whm2);
        meterings.push_back(std::move(metering));
    }
    return meterings;
}

std::vector<Metering> meteringsOf(const std::vector<LoggedDay>& days, const LightLog& log,
                                  const Place& place, const std::string& file,
                                  const std::optional<std::string>& instrument,
                                  const std::string& note) {
    requireNoneMetered(days, place, file);
    std::vector<Metering> meterings = meteringsOfDays(days, log, place);
    for (Metering& metering : meterings) {
        metering.instrument = instrument;
        metering.note = note;
    }
    if (days.empty())
        throw InputError(file, "no day of it is left", "Give an earlier day for --since.");
    if (meterings.empty())
        throw InputError(file, "no day of it can be recorded",
                         "A metering wants two readings of a day, no more than three usual steps "
                         "apart, the second later on the studio's clock.");
    return meterings;
}

}  // namespace rackbook
