#include "commands/DrawerFactsOf.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Finding.h"
#include "commands/DrawersPlan.h"
#include "commands/PlaceGiven.h"
#include "sheets/ReadinessFacts.h"

namespace rackbook {

namespace {

class DrawerFactsMaker {
public:
    DrawerFactsMaker(const RecordSet& records, const ReadinessFacts& judged,
                     const DrawersPlan& plan)
        : m_records(records), m_judged(judged), m_plan(plan) {}

    DrawerWithFacts make(const DrawerContents& drawer) const {
        const HistoryPlace& place = m_judged.history.places[static_cast<std::size_t>(drawer.place)];
        DrawerWithFacts made;
        made.place = place.id;
        DrawerFacts& facts = made.facts;
        facts.asOf = m_judged.readiness.asOf;
        facts.studio = m_judged.studio;
        facts.name = place.name;
        facts.capacity = drawer.capacity;
        const RuleInForce& airing = m_judged.rules.rule("airing_days");
        facts.airing_days = airing.value;
        facts.airingOrigin = airing.origin;
        facts.airingSource = airing.source;
        for (std::size_t i = 0; i < m_judged.titles.size(); ++i)
            facts.editions.push_back({m_judged.history.editions[i].code, m_judged.titles[i]});
        for (const LyingPrint& print : drawer.prints) {
            made.impressions.push_back(idOf(print.impression));
            facts.prints.push_back(printOf(print));
        }
        for (const PutAwaySoft& soft : drawer.soft)
            facts.soft.push_back(softOf(soft));
        return made;
    }

private:
    const std::string& idOf(int impression) const {
        const std::int64_t key =
            m_judged.history.impressions[static_cast<std::size_t>(impression)].key;
        return m_records.of<Impression>()[static_cast<std::size_t>(key)].id;
    }

    const ReadinessImpression& labelOf(int impression) const {
        return m_judged.impressions[static_cast<std::size_t>(impression)];
    }

    const HistoryLook& lookOf(int look) const {
        return m_judged.history.looks[static_cast<std::size_t>(look)];
    }

    DrawerPrint printOf(const LyingPrint& lying) const {
        const ReadinessImpression& label = labelOf(lying.impression);
        DrawerPrint print;
        print.edition = label.edition;
        print.workingNumber = label.workingNumber;
        print.designation = label.designation;
        if (!lying.isSpoiled)
            print.verdict = m_judged.readiness.rows[lying.row].verdict;
        print.mayNeedLight = lying.isAtRisk;
        print.since = lying.stay.from;
        print.isInterleaved = lying.stay.interleaved;
        print.perhapsElsewhere = lying.stay.undecided;
        print.darkSince = lying.darkSince;
        if (lying.isAtRisk) {
            print.airing_day = airingDay(lying, m_plan.airing_days);
            print.isAiringDue = isAiringDue(lying, m_plan.airing_days, m_judged.readiness.asOf);
        }
        if (lying.touchLook >= 0)
            print.touchThen = lookOf(lying.touchLook).touch;
        if (lying.drySince >= 0)
            print.foundDryOn = lookOf(lying.drySince).at;
        return print;
    }

    DrawerName nameOf(int impression, bool isInterleaved) const {
        const ReadinessImpression& label = labelOf(impression);
        return {label.edition, label.workingNumber, isInterleaved};
    }

    DrawerSoft softOf(const PutAwaySoft& soft) const {
        DrawerSoft made;
        for (const int impression : soft.impressions)
            made.prints.push_back(nameOf(impression, soft.isInterleaved));
        made.putThere = soft.putAway;
        made.isInterleaved = soft.isInterleaved;
        if (soft.touchLook >= 0) {
            made.touch = lookOf(soft.touchLook).touch;
            made.touchOn = lookOf(soft.touchLook).at;
        }
        for (const DrawerNeighbour& one : soft.besideThen)
            made.besideThen.push_back(nameOf(one.impression, one.isInterleaved));
        for (const DrawerNeighbour& one : soft.besideNow) {
            const bool wasThere = std::any_of(
                soft.besideThen.begin(), soft.besideThen.end(),
                [&](const DrawerNeighbour& then) { return then.impression == one.impression; });
            if (!wasThere)
                made.comeSince.push_back(nameOf(one.impression, one.isInterleaved));
        }
        return made;
    }

    const RecordSet& m_records;
    const ReadinessFacts& m_judged;
    const DrawersPlan& m_plan;
};

}  // namespace

std::vector<DrawerWithFacts> drawersWithFactsOf(const RecordSet& records, const Place& place,
                                                CivilMinute asOf) {
    ReadinessQuestion question;
    question.asOf = asOf;
    question.namesHolders = true;  // places out of the studio's hands are left out anyway
    const ReadinessFacts judged = readinessFactsOf(records, question);
    std::vector<std::optional<int>> capacities;
    for (const Place& one : records.of<Place>())
        capacities.push_back(one.capacity);
    const DrawersPlan plan = drawersPlanOf(judged.history, judged.readiness, judged.rules,
                                           capacities, placePosition(judged.history, place.id));
    if (plan.drawers.empty())
        throw UsageError("at " + excerpt(place.id) +
                             " there is no drawer, no box and no print in a dark place, in the "
                             "studio's hands",
                         "rackbook drawers lists those there are.");
    const DrawerFactsMaker maker(records, judged, plan);
    std::vector<DrawerWithFacts> all;
    for (const DrawerContents& drawer : plan.drawers)
        all.push_back(maker.make(drawer));
    return all;
}

}  // namespace rackbook
