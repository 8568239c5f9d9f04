#include "commands/DrawersPlan.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "calc/PlaceLight.h"
#include "commands/DrawerTouch.h"
#include "commands/PlaceGiven.h"
#include "commands/ReadyReport.h"

namespace rackbook {

namespace {

LyingPrint lyingPrint(const History& history, const Stay& stay, int impression, CivilMinute asOf) {
    LyingPrint print;
    print.impression = impression;
    print.stay = stay;
    print.darkSince = stay.from;
    fillTouch(print, history, asOf);
    return print;
}

void judge(LyingPrint& print, const Readiness& readiness, std::size_t row) {
    const ReadinessRow& judged = readiness.rows[row];
    print.row = row;
    print.isAtRisk = mayNeedLight(judged.verdict);
    print.isToComeOut = judged.verdict == Verdict::bringOut;
    if (judged.pull >= 0 && countsAsDark(judged.lightNow))
        print.darkSince = judged.darkSince;
}

// What an impression's last stay says of where it is: nothing where that has ended, or where it was
// destroyed.
const Stay* presentStay(const HistoryImpression& impression, const std::vector<Stay>& stays,
                        CivilMinute asOf) {
    const bool isGone = impression.fate == ImpressionFate::destroyed && impression.fateFrom <= asOf;
    if (isGone || stays.empty() || stays.back().place < 0 || stays.back().to.earliest <= asOf)
        return nullptr;
    return &stays.back();
}

// All stays at every place, and what lies there now.
struct Contents {
    std::vector<std::vector<StayOfPrint>> stays;
    std::vector<std::vector<LyingPrint>> lying;
};

// Of places that are of no concern nothing is kept.
Contents contentsOf(const History& history, const Readiness& readiness,
                    const std::vector<bool>& concerns) {
    constexpr std::size_t notJudged = SIZE_MAX;
    std::vector<std::size_t> rowOf(history.impressions.size(), notJudged);
    for (std::size_t i = 0; i < readiness.rows.size(); ++i)
        rowOf[static_cast<std::size_t>(readiness.rows[i].impression)] = i;
    Contents contents;
    contents.stays.resize(history.places.size());
    contents.lying.resize(history.places.size());
    std::vector<Stay> stays;
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        staysOf(history, i, readiness.asOf, stays);
        for (const Stay& stay : stays)
            if (stay.place >= 0 && concerns[static_cast<std::size_t>(stay.place)])
                contents.stays[static_cast<std::size_t>(stay.place)].push_back(
                    {static_cast<int>(i), stay});
        const Stay* present = presentStay(history.impressions[i], stays, readiness.asOf);
        if (!present || !concerns[static_cast<std::size_t>(present->place)])
            continue;
        LyingPrint print = lyingPrint(history, *present, static_cast<int>(i), readiness.asOf);
        print.isSpoiled = rowOf[i] == notJudged;
        if (!print.isSpoiled)
            judge(print, readiness, rowOf[i]);
        contents.lying[static_cast<std::size_t>(present->place)].push_back(print);
    }
    return contents;
}

bool isDrawer(const HistoryPlace& place) {
    return place.placeKind == PlaceKind::drawer || place.placeKind == PlaceKind::box;
}

bool holdsKept(const std::vector<LyingPrint>& prints) {
    return std::any_of(prints.begin(), prints.end(),
                       [](const LyingPrint& print) { return !print.isSpoiled; });
}

// The first by airingOrder among what is at risk; after all of them where nothing is.
std::pair<bool, CivilMinute> firstToAir(const DrawerContents& drawer) {
    std::pair<bool, CivilMinute> first{true, endOfTime};
    for (const LyingPrint& print : drawer.prints)
        if (print.isAtRisk)
            first = std::min(first, airingOrder(print));
    return first;
}

}  // namespace

std::size_t DrawerContents::atRisk() const {
    return static_cast<std::size_t>(std::count_if(
        prints.begin(), prints.end(), [](const LyingPrint& print) { return print.isAtRisk; }));
}

DrawersPlan drawersPlanOf(const History& history, const Readiness& readiness,
                          const HouseRules& rules,
                          const std::vector<std::optional<int>>& capacities, int within) {
    DrawersPlan plan;
    plan.airing_days = rules.value("airing_days");
    const PlaceLight light(history);
    std::vector<bool> concerns;
    for (std::size_t i = 0; i < history.places.size(); ++i) {
        const int place = static_cast<int>(i);
        const bool isDark = light.at(place, readiness.asOf) == LightState::dark;
        concerns.push_back((isDrawer(history.places[i]) || isDark) && !light.isOutOfHands(place) &&
                           (within < 0 || liesWithin(history, place, within)));
    }
    Contents contents = contentsOf(history, readiness, concerns);
    for (std::size_t i = 0; i < history.places.size(); ++i) {
        if (!concerns[i] || (!isDrawer(history.places[i]) && !holdsKept(contents.lying[i])))
            continue;
        DrawerContents drawer;
        drawer.place = static_cast<int>(i);
        drawer.capacity = capacities[i];
        drawer.prints = std::move(contents.lying[i]);
        drawer.soft = putAwaySoft(drawer.prints, contents.stays[i]);
        plan.drawers.push_back(std::move(drawer));
    }
    std::stable_sort(plan.drawers.begin(), plan.drawers.end(),
                     [&](const DrawerContents& a, const DrawerContents& b) {
                         const auto key = [&](const DrawerContents& drawer) {
                             return std::make_tuple(
                                 firstToAir(drawer),
                                 history.places[static_cast<std::size_t>(drawer.place)].name);
                         };
                         return key(a) < key(b);
                     });
    return plan;
}

std::optional<std::int64_t> airingDay(const LyingPrint& print, double airing_days) {
    if (print.isToComeOut || print.darkSince.earliest <= beginningOfTime)
        return std::nullopt;
    return dayOf(print.darkSince.earliest) + static_cast<std::int64_t>(std::ceil(airing_days));
}

std::pair<bool, CivilMinute> airingOrder(const LyingPrint& print) {
    return {!print.isToComeOut, print.darkSince.earliest};
}

bool isAiringDue(const LyingPrint& print, double airing_days, CivilMinute asOf) {
    const std::optional<std::int64_t> day = airingDay(print, airing_days);
    return !day || *day <= dayOf(asOf);
}

}  // namespace rackbook
