#include "commands/LightLogDoubts.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/Numbers.h"
#include "calc/MostDaylight.h"
#include "checks/MeteringDoubts.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

bool isOfLight(const LightLog& log) {
    return log.quantity == LightQuantity::illuminance_lx;
}

double rateOf(const LightLog& log, const LightRate& rate) {
    return isOfLight(log) ? rate.illuminance_lx : rate.ultravioletA_Wm2;
}

std::string valueWords(const LightLog& log, double value) {
    return formatFixed(value, value < 10 ? 1 : 0) + " " + nameOf(log.quantity);
}

Finding warning(const std::string& file, const std::string& what, const std::string& remedy) {
    Finding finding;
    finding.rule = "light-log";
    finding.severity = Severity::warning;
    finding.where.file = file;
    finding.what = what;
    finding.remedy = remedy;
    return finding;
}

// A logger that writes means may write them at either end of its step. Most readings are below what
// is possible at their very time, and ask for no more.
double mostFor(const LightLog& log, const LightSample& sample, const GeoPoint& studio) {
    constexpr double longestStep_min = 60;
    const double step_min = std::min(longestStep_min, log.usualStep_min);
    double most = 0;
    for (const double away_min : {0.0, -step_min, step_min})
        if (sample.value > most)
            most = std::max(most, rateOf(log, mostLightAt(studio, {sample.utc_min + away_min})));
    return most;
}

CivilMinute minuteOf(const LightSample& sample, const ZoneShifts& shifts) {
    return shifts.civilOf(static_cast<CivilMinute>(std::floor(sample.utc_min)));
}

struct ReadingsBeyond {
    std::size_t count = 0;
    const LightSample* worst = nullptr;
    double most = 0;  // at the worst
};

ReadingsBeyond beyondSun(const LightLog& log, const Ref<Place>& place, const ZoneShifts& shifts,
                         const MeteringDoubts& doubts, std::int64_t firstDay) {
    ReadingsBeyond beyond;
    for (const LightSample& sample : log.samples) {
        if (sample.value <= rateOf(log, mostLamps))
            continue;
        const CivilMinute minute = minuteOf(sample, shifts);
        if (dayOf(minute) < firstDay || !doubts.isUnderStudioSun(place, minute, minute + 1))
            continue;
        const double most = mostFor(log, sample, doubts.studio());
        if (sample.value <= most)
            continue;
        ++beyond.count;
        if (!beyond.worst || sample.value / most > beyond.worst->value / beyond.most) {
            beyond.worst = &sample;
            beyond.most = most;
        }
    }
    return beyond;
}

Finding findingOf(const ReadingsBeyond& beyond, const LightLog& log, const ZoneShifts& shifts,
                  const std::string& file) {
    std::string when = formatMinute(minuteOf(*beyond.worst, shifts));
    when[when.find('T')] = ' ';
    return warning(file,
                   std::to_string(beyond.count) +
                       (beyond.count == 1 ? " reading is" : " readings are") +
                       " beyond what the sun over the studio and lamps beside it give at that "
                       "time, most of all " +
                       valueWords(log, beyond.worst->value) + " at " + when + ", where it is " +
                       valueWords(log, beyond.most),
                   std::string("Check the unit, the clock and order of dates, and the place") +
                       (isOfLight(log) ? "." : "; near ultraviolet is UV-A alone."));
}

// The first of the meterings in doubt, and how many there are.
template <class Doubt>
std::optional<Finding> firstOf(const std::vector<Metering>& meterings, const std::string& file,
                               Doubt&& doubtOf) {
    std::optional<MeteringDoubt> first;
    std::size_t days = 0;
    for (const Metering& metering : meterings)
        if (const std::optional<MeteringDoubt> doubt = doubtOf(metering)) {
            first = first ? first : doubt;
            ++days;
        }
    if (!first)
        return std::nullopt;
    const std::string others =
        days > 1 ? "; " + std::to_string(days) + " days in all" : std::string();
    return warning(file, first->what + others, first->remedy);
}

// Meterings of ultraviolet that begin when those of the log do: the log's own, or the book's at
// its place.
std::vector<Metering> ofUltraviolet(const std::vector<Metering>& ofBook,
                                    const std::vector<Metering>& ofLog) {
    std::set<CivilMinute> starts;
    for (const Metering& metering : ofLog)
        starts.insert(metering.from.earliest());
    std::vector<Metering> found;
    for (const std::vector<Metering>* list : {&ofBook, &ofLog})
        for (const Metering& metering : *list)
            if (metering.nearUltraviolet_Whm2 && metering.place == ofLog.front().place &&
                starts.count(metering.from.earliest()) > 0)
                found.push_back(metering);
    return found;
}

}  // namespace

std::vector<Finding> lightLogDoubts(const BookFile& book, const LightLog& log, const Place& place,
                                    const ZoneShifts& shifts, const std::vector<LoggedDay>& days,
                                    const std::string& file) {
    std::vector<Finding> found;
    const std::vector<Metering> ofLog = meteringsOfDays(days, log, place);
    if (ofLog.empty())
        return found;
    const std::vector<Place> places = allOf<Place>(book);
    const std::vector<Metering> ofBook = allOf<Metering>(book);
    std::vector<Metering> all = ofBook;
    all.insert(all.end(), ofLog.begin(), ofLog.end());
    const Book studio = bookRecordOf(book);
    const MeteringDoubts doubts(places, all, &studio);
    if (auto dark = firstOf(ofLog, file, [&](const Metering& m) { return doubts.darkPlace(m); }))
        found.push_back(std::move(*dark));
    const ReadingsBeyond beyond = beyondSun(log, {place.id}, shifts, doubts, days.front().day);
    if (beyond.worst)
        found.push_back(findingOf(beyond, log, shifts, file));
    if (auto uneven = firstOf(ofUltraviolet(ofBook, ofLog), file,
                              [&](const Metering& m) { return doubts.beyondItsLight(m); }))
        found.push_back(std::move(*uneven));
    return found;
}

}  // namespace rackbook
