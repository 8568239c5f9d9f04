#include "commands/DrawerTouch.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace rackbook {

namespace {

CivilMinute lastPullBy(const History& history, std::size_t impression, CivilMinute by) {
    CivilMinute last = beginningOfTime;
    const std::uint32_t* end = history.pullsOf.end(impression);
    for (const std::uint32_t* row = history.pullsOf.begin(impression); row != end; ++row)
        if (history.pulls[*row].start.earliest <= by)
            last = std::max(last, history.pulls[*row].start.latest);
    return last;
}

// Among looks at the impression that say how it feels, the last in (after, until], or the first
// that found it dry; -1 where there is none.
int touchLookIn(const History& history, std::size_t impression, CivilMinute after,
                CivilMinute until, bool firstDry) {
    int found = -1;
    const std::uint32_t* end = history.looksOf.end(impression);
    for (const std::uint32_t* row = history.looksOf.begin(impression); row != end; ++row) {
        const HistoryLook& look = history.looks[*row];
        if (!look.hasTouch || look.at.earliest <= after || look.at.earliest > until)
            continue;
        if (firstDry && look.touch != Touch::dry)
            continue;
        const CivilMinute at =
            found < 0 ? 0 : history.looks[static_cast<std::size_t>(found)].at.earliest;
        const bool isBetter =
            found < 0 || (firstDry ? look.at.earliest < at : look.at.earliest >= at);
        if (isBetter)
            found = static_cast<int>(*row);
    }
    return found;
}

using SoftKey = std::tuple<CivilMinute, CivilMinute, bool, int>;

SoftKey keyOf(const LyingPrint& print) {
    return {print.stay.from.earliest, print.stay.from.latest, print.stay.interleaved,
            print.touchLook};
}

void addOther(std::vector<DrawerNeighbour>& neighbours, const std::set<int>& own, int impression,
              const Stay& stay) {
    if (own.count(impression) == 0)
        neighbours.push_back({impression, stay.interleaved});
}

// A print that comes back later has more than one stay there.
void sortOnce(std::vector<DrawerNeighbour>& neighbours) {
    std::sort(neighbours.begin(), neighbours.end(),
              [](const DrawerNeighbour& a, const DrawerNeighbour& b) {
                  return std::tie(a.impression, a.isInterleaved) <
                         std::tie(b.impression, b.isInterleaved);
              });
    neighbours.erase(std::unique(neighbours.begin(), neighbours.end(),
                                 [](const DrawerNeighbour& a, const DrawerNeighbour& b) {
                                     return a.impression == b.impression;
                                 }),
                     neighbours.end());
}

void fillNeighbours(PutAwaySoft& soft, const std::vector<LyingPrint>& prints,
                    const std::vector<StayOfPrint>& stays) {
    const std::set<int> own(soft.impressions.begin(), soft.impressions.end());
    for (const StayOfPrint& one : stays)
        if (one.stay.from.earliest <= soft.putAway.latest &&
            one.stay.to.latest > soft.putAway.earliest)
            addOther(soft.besideThen, own, one.impression, one.stay);
    for (const LyingPrint& print : prints)
        addOther(soft.besideNow, own, print.impression, print.stay);
    sortOnce(soft.besideThen);
    sortOnce(soft.besideNow);
}

}  // namespace

void fillTouch(LyingPrint& print, const History& history, CivilMinute asOf) {
    const auto impression = static_cast<std::size_t>(print.impression);
    const CivilMinute putAway = print.stay.from.latest;
    const CivilMinute lastPull = lastPullBy(history, impression, putAway);
    print.touchLook = touchLookIn(history, impression, lastPull, putAway, false);
    print.wasFoundDry =
        print.touchLook >= 0 &&
        history.looks[static_cast<std::size_t>(print.touchLook)].touch == Touch::dry;
    if (!print.wasFoundDry)
        print.drySince = touchLookIn(history, impression, std::max(putAway, lastPull), asOf, true);
}

std::vector<PutAwaySoft> putAwaySoft(const std::vector<LyingPrint>& prints,
                                     const std::vector<StayOfPrint>& stays) {
    std::map<SoftKey, PutAwaySoft> groups;
    for (const LyingPrint& print : prints) {
        if (print.wasFoundDry || print.drySince >= 0)
            continue;
        PutAwaySoft& soft = groups[keyOf(print)];
        soft.impressions.push_back(print.impression);
        soft.putAway = print.stay.from;
        soft.isInterleaved = print.stay.interleaved;
        soft.touchLook = print.touchLook;
    }
    std::vector<PutAwaySoft> all;
    for (auto& [key, soft] : groups) {
        fillNeighbours(soft, prints, stays);
        all.push_back(std::move(soft));
    }
    return all;
}

}  // namespace rackbook
