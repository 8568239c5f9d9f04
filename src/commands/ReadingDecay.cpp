#include "commands/ReadingDecay.h"

#include <algorithm>
#include <map>
#include <optional>

#include "calc/ColourDifference.h"
#include "calc/ReadingColour.h"

namespace rackbook {

namespace {

// What the pairs are measured against: the last reading.
std::vector<DecayPoint> pointsOf(const std::vector<const Reading*>& readings, DoseLedger& ledger,
                                 const std::vector<Stay>& stays, const TimeSpan& pulled) {
    std::vector<DecayPoint> points;
    const Reading& last = *readings.back();
    const auto final = colourOf(last, ViewingLight::D50, Observer::deg2);
    if (!final)
        return points;
    for (const Reading* reading : readings) {
        if (reading == &last || !unlikeConditions(*reading, last).empty())
            continue;
        const auto colour = colourOf(*reading, ViewingLight::D50, Observer::deg2);
        const double dose =
            ledger.sumSince(stays, pulled, reading->takenOn->latest()).sunnyDays.best;
        if (colour && !std::isnan(dose))
            points.push_back({dose, deltaE00(colour->lab, final->lab)});
    }
    return points;
}

}  // namespace

std::vector<ReadingDecay> readingDecaysOf(const History& history,
                                          const std::vector<ImpressionLabel>& labels,
                                          const std::vector<PullInk>& inks,
                                          const std::vector<Reading>& readings,
                                          const HouseRules& rules, DoseLedger& ledger,
                                          CivilMinute asOf) {
    std::map<std::string, std::vector<const Reading*>> ofImpression;
    for (const Reading& reading : readings)
        if (reading.impression && reading.takenOn &&
            !isBadlyKnown({reading.takenOn->earliest(), reading.takenOn->latest()}) &&
            reading.takenOn->latest() <= asOf)
            ofImpression[reading.impression->id].push_back(&reading);
    std::vector<ReadingDecay> decays;
    std::vector<Stay> stays;
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        const auto found = ofImpression.find(labels[i].id);
        if (found == ofImpression.end())
            continue;
        const std::optional<std::uint32_t> pull = lastRichPullOf(history, inks, i, asOf).pull;
        if (!pull)
            continue;
        const TimeSpan& pulled = history.pulls[*pull].start;
        std::vector<const Reading*> its;
        std::copy_if(found->second.begin(), found->second.end(), std::back_inserter(its),
                     [&](const Reading* one) { return one->takenOn->earliest() > pulled.latest; });
        if (its.size() < 2)
            continue;
        std::stable_sort(its.begin(), its.end(), [](const Reading* a, const Reading* b) {
            return a->takenOn->earliest() < b->takenOn->earliest();
        });
        staysOf(history, i, asOf, stays);
        ReadingDecay one;
        one.impression = i;
        one.finalReading = its.back()->id;
        one.points = pointsOf(its, ledger, stays, pulled);
        DecayQuestion question;
        question.points = one.points;
        question.wanted_dE00 = rules.value("colourTolerance_dE00");
        one.decay = colourDecay(question);
        decays.push_back(std::move(one));
    }
    return decays;
}

}  // namespace rackbook
