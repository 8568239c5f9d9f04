#include "commands/ForecastPlan.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "calc/PlaceLight.h"
#include "calc/ToldChance.h"
#include "commands/ReadyReport.h"

namespace rackbook {

namespace {

// A place to which nothing was moved for two years is given up; one that never held a print is new.
std::vector<bool> placesInUse(const History& history, CivilMinute asOf) {
    std::vector<CivilMinute> lastUse(history.places.size(), asOf);
    std::vector<bool> wasUsed(history.places.size(), false);
    for (const HistoryMove& move : history.moves) {
        if (move.to < 0 || move.at.earliest > asOf)
            continue;
        const auto to = static_cast<std::size_t>(move.to);
        lastUse[to] = wasUsed[to] ? std::max(lastUse[to], move.at.latest) : move.at.latest;
        wasUsed[to] = true;
    }
    std::vector<bool> inUse;
    for (const CivilMinute last : lastUse)
        inUse.push_back(last + 2 * 366 * minutesPerDay >= asOf);
    return inUse;
}

// Racks and walls in the studio that are lit, by their names.
std::vector<int> litPlaces(const History& history, CivilMinute asOf) {
    const PlaceLight light(history);
    const std::vector<bool> isInUse = placesInUse(history, asOf);
    std::vector<int> places;
    for (std::size_t i = 0; i < history.places.size(); ++i) {
        const int place = static_cast<int>(i);
        const PlaceKind kind = history.places[i].placeKind;
        const bool holdsPrints =
            kind == PlaceKind::rack || kind == PlaceKind::wall || kind == PlaceKind::other;
        if (holdsPrints && isInUse[i] && !light.isOutOfHands(place) &&
            light.at(place, asOf) == LightState::lit)
            places.push_back(place);
    }
    std::sort(places.begin(), places.end(), [&](int a, int b) {
        return history.places[static_cast<std::size_t>(a)].name <
               history.places[static_cast<std::size_t>(b)].name;
    });
    return places;
}

using GroupKey = std::tuple<int, std::string, int, bool, int, double, double, double, double, int,
                            CivilMinute, CivilMinute>;

GroupKey keyOf(const History& history, const ReadinessRow& row, const ImpressionLabel& label) {
    const CivilMinute seen =
        row.colourLook < 0 ? beginningOfTime
                           : history.looks[static_cast<std::size_t>(row.colourLook)].at.earliest;
    return {urgencyOf(row.verdict),
            label.edition,
            row.place,
            row.isInterleaved,
            row.pull,
            row.daysLow,
            row.daysHigh,
            row.dose.sunnyDays.low,
            row.notYet_sunnyDays.high,
            row.looks.foundTrue,
            row.lastTrueLook,
            toldChanceOf(row) == ToldChance::foundTrue ? seen : beginningOfTime};
}

PlaceForecast forecastFor(const LightModel& model, const ForecastGroup& group,
                          const ReadinessRow& row, int place, CivilMinute from,
                          const HouseRules& rules) {
    PlaceForecast one;
    one.place = place;
    one.isHere = place == row.place && !group.isInterleaved;
    one.isInterleavedHere = place == row.place && group.isInterleaved;
    if (toldChanceOf(row) != ToldChance::datesTooWide)
        one.days = forecastAt(model, row, place, from, forecastChancesOf(row, rules));
    return one;
}

}  // namespace

ForecastPlan forecastPlanOf(const History& history, const std::vector<ImpressionLabel>& labels,
                            const Readiness& readiness, const LightModel& model,
                            const HouseRules& rules, int onlyPlace) {
    ForecastPlan plan;
    plan.places = onlyPlace >= 0 ? std::vector<int>{onlyPlace} : litPlaces(history, readiness.asOf);
    const PlaceLight light(history);
    std::map<GroupKey, ForecastGroup> groups;
    for (std::size_t i = 0; i < readiness.rows.size(); ++i) {
        const ReadinessRow& row = readiness.rows[i];
        if (!mayNeedLight(row.verdict) || row.pull < 0) {
            ++(row.verdict == Verdict::unknown ? plan.notKnown : plan.notConcerned);
            continue;
        }
        const ImpressionLabel& label = labels[static_cast<std::size_t>(row.impression)];
        ForecastGroup& group = groups[keyOf(history, row, label)];
        if (group.numbers.empty())
            group.sample = i;
        group.isInterleaved = row.isInterleaved;
        group.isPlaceLit = row.place >= 0 && light.at(row.place, readiness.asOf) == LightState::lit;
        group.edition = label.edition;
        group.numbers.push_back(label.workingNumber);
    }
    for (auto& [key, group] : groups) {
        const ReadinessRow& row = readiness.rows[group.sample];
        for (const int place : plan.places)
            group.at.push_back(forecastFor(model, group, row, place, readiness.asOf, rules));
        std::stable_partition(group.at.begin(), group.at.end(), [](const PlaceForecast& one) {
            return one.isHere || one.isInterleavedHere;
        });
        plan.groups.push_back(std::move(group));
    }
    return plan;
}

}  // namespace rackbook
