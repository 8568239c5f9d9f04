// Colour that has come back in light stays, unless the print goes into the dark too early (common
// practice, no source): a look that found it turned, after one that had found it true and with
// nothing but light in between, says that one of the two is wrong. Ink that was dry stays dry: only
// another layer makes a print wet again.
#include <algorithm>
#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "calc/PlaceLight.h"
#include "calc/PullInk.h"
#include "calc/Readiness.h"
#include "calc/Stays.h"
#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

// By the later look and the one before it.
using LookPairs = std::map<std::pair<const Look*, const Look*>, Numbers>;

struct Doubt {
    std::size_t impression;  // position in the history
    const Look* foundTrue;
    const Look* foundTurned;
};

bool isOfOneDay(const Look& a, const Look& b) {
    return dayOf(a.at.earliest()) == dayOf(b.at.earliest()) && !a.at.isBadlyKnown() &&
           !b.at.isBadlyKnown();
}

bool wasPulledOnThatDay(const ImpressionTimeline& timeline, const Look& look) {
    const std::int64_t day = dayOf(look.at.earliest());
    return std::any_of(timeline.pulls.begin(), timeline.pulls.end(), [&](const Pull* pull) {
        return dayOf(pull->start.earliest()) <= day && dayOf(pull->start.latest()) >= day;
    });
}

// Goes through the looks of one impression; each turn of the colour is told once.
template <class OneDay, class Later>
void eachContradiction(const ImpressionTimeline& timeline, OneDay&& oneDay, Later&& later) {
    const Look* foundTrue = nullptr;
    const Look* foundTurned = nullptr;
    for (const Look* look : timeline.looks) {
        if (look->colour == LookColour::turned) {
            if (foundTrue && isOfOneDay(*foundTrue, *look))
                oneDay(*foundTrue, *look);
            else if (foundTrue && certainlyBefore(foundTrue->at, look->at))
                later(*foundTrue, *look);
            foundTurned = look;
            foundTrue = nullptr;
        } else if (look->colour == LookColour::trueColour) {
            if (foundTurned && isOfOneDay(*foundTurned, *look))
                oneDay(*foundTurned, *look);
            foundTrue = look;
        }
    }
}

// False wherever it may have lain in the dark, or nobody knows.
bool wasLitThroughout(const std::vector<Stay>& stays, const PlaceLight& light, CivilMinute from,
                      CivilMinute to) {
    bool begun = false;
    for (const Stay& stay : stays) {
        if (stay.to.latest <= from || stay.from.earliest >= to)
            continue;
        if (stay.place < 0 || stay.undecided || stay.interleaved)
            return false;
        if (!light.isLitThroughout(stay.place, std::max(from, stay.from.earliest),
                                   std::min(to, stay.to.latest)))
            return false;
        if (!begun && stay.from.latest > from)
            return false;
        if (!stay.followed && stay.to.earliest < to)
            return false;
        begun = true;
    }
    return begun;
}

class Doubts {
public:
    explicit Doubts(const AuditContext& context)
        : m_context(context),
          m_history(context.history()),
          m_light(m_history),
          m_inks(inkOfPulls(m_history, context.rules())),
          m_positions(m_history.impressions.size()) {
        for (std::size_t i = 0; i < m_positions.size(); ++i)
            m_positions[static_cast<std::size_t>(m_history.impressions[i].key)] = i;
    }

    // `impression` is a position in the record set.
    void add(std::size_t impression, const Look& foundTrue, const Look& foundTurned) {
        const std::size_t at = m_positions[impression];
        staysOf(m_history, at, foundTurned.at.latest(), m_stays);
        if (wasLitThroughout(m_stays, m_light, foundTrue.at.latest(), foundTurned.at.earliest()) &&
            !mayHaveGotBase(at, foundTrue, foundTurned) && !wasGoneBy(at, foundTrue.at.latest())) {
            m_doubts.push_back({at, &foundTrue, &foundTurned});
            m_whenTrue.push_back({at, foundTrue.at.latest()});
        }
    }

    // Fresh ink looks true before it turns: an earlier look counts only where the readiness check
    // would take it for the colour that it has come to.
    void resolve(LookPairs& pairs) const {
        const std::vector<ReadinessRow> rows =
            readinessAt(m_history, m_context.rules(), m_whenTrue);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const ReadinessRow& row = rows[i];
            const Doubt& doubt = m_doubts[i];
            if (row.pull >= 0 && row.doubtfulPull < 0 && row.looks.foundTrue > 0)
                pairs[{doubt.foundTurned, doubt.foundTrue}].add(m_context.records(),
                                                                recordOf(doubt.impression));
        }
    }

private:
    bool wasGoneBy(std::size_t impression, CivilMinute minute) const {
        const HistoryImpression& its = m_history.impressions[impression];
        return its.fate != ImpressionFate::kept && its.fateFrom <= minute;
    }

    // Whether another extender-rich layer may have come to it between the two looks.
    bool mayHaveGotBase(std::size_t impression, const Look& foundTrue,
                        const Look& foundTurned) const {
        return std::any_of(m_history.pullsOf.begin(impression), m_history.pullsOf.end(impression),
                           [&](std::uint32_t pull) {
                               const TimeSpan& start = m_history.pulls[pull].start;
                               return m_inks[pull].richness != Richness::notRich &&
                                      start.latest >= foundTrue.at.earliest() &&
                                      start.earliest <= foundTurned.at.latest();
                           });
    }

    const Impression& recordOf(std::size_t impression) const {
        return m_context.records()
            .of<Impression>()[static_cast<std::size_t>(m_history.impressions[impression].key)];
    }

    const AuditContext& m_context;
    const History& m_history;
    PlaceLight m_light;
    std::vector<PullInk> m_inks;
    std::vector<std::size_t> m_positions;  // in the history, by position in the record set
    std::vector<Stay> m_stays;
    std::vector<Doubt> m_doubts;
    std::vector<JudgedMoment> m_whenTrue;  // of each doubt, when the earlier look was over
};

bool mayHaveBeenPulled(const ImpressionTimeline& timeline, const Look& from, const Look& to) {
    return std::any_of(timeline.pulls.begin(), timeline.pulls.end(), [&](const Pull* pull) {
        return pull->start.latest() >= from.at.earliest() &&
               pull->start.earliest() <= to.at.latest();
    });
}

// Calls wetAgain(dry, wet) for a look that found a print wet or tacky after one that had found it
// dry, once for each time that it was dry.
template <class WetAgain>
void eachWetAgain(const ImpressionTimeline& timeline, WetAgain&& wetAgain) {
    const Look* foundDry = nullptr;
    for (const Look* look : timeline.looks) {
        if (!look->touch)
            continue;
        if (*look->touch == Touch::dry) {
            foundDry = look;
        } else if (foundDry && certainlyBefore(foundDry->at, look->at)) {
            if (!mayHaveBeenPulled(timeline, *foundDry, *look))
                wetAgain(*foundDry, *look);
            foundDry = nullptr;
        }
    }
}

const char* const whatToDo = "Look again, and correct the look that is wrong or strike it out.";

void tellWetAgain(const AuditContext& context, FindingList& found) {
    LookPairs pairs;
    const std::vector<Impression>& impressions = context.records().of<Impression>();
    for (std::size_t i = 0; i < impressions.size(); ++i)
        eachWetAgain(context.timelineOf(i), [&](const Look& foundDry, const Look& foundWet) {
            pairs[{&foundWet, &foundDry}].add(context.records(), impressions[i]);
        });
    for (const auto& [looks, numbers] : pairs)
        found.add(Severity::warning, *looks.first, "/touch",
                  numbers.words("was", "were") + " found " + textOf(*looks.first->touch) +
                      ", but look " + looks.second->id + " of " + looks.second->at.text() +
                      " had found the ink dry, and no pull is recorded in between",
                  looks.first->at.text(), whatToDo);
}

}  // namespace

Findings looksContradict(const AuditContext& context) {
    LookPairs ofOneDay;
    LookPairs later;
    Doubts doubts(context);
    const std::vector<Impression>& impressions = context.records().of<Impression>();
    for (std::size_t i = 0; i < impressions.size(); ++i) {
        const ImpressionTimeline& timeline = context.timelineOf(i);
        eachContradiction(
            timeline,
            [&](const Look& before, const Look& look) {
                if (!wasPulledOnThatDay(timeline, look))
                    ofOneDay[{&look, &before}].add(context.records(), impressions[i]);
            },
            [&](const Look& foundTrue, const Look& foundTurned) {
                doubts.add(i, foundTrue, foundTurned);
            });
    }
    doubts.resolve(later);
    FindingList found;
    for (const auto& [looks, numbers] : ofOneDay)
        found.add(Severity::warning, *looks.first, "/colour",
                  numbers.words("was", "were") + " found " + textOf(*looks.first->colour) +
                      " on this day, and " + textOf(*looks.second->colour) + " by look " +
                      looks.second->id + " of " + looks.second->at.text(),
                  looks.first->at.text(), whatToDo);
    for (const auto& [looks, numbers] : later)
        found.add(Severity::warning, *looks.first, "/colour",
                  numbers.words("was", "were") + " found turned, but look " + looks.second->id +
                      " of " + looks.second->at.text() +
                      " had found the colour true since the last extender-rich layer, and nothing "
                      "but light is recorded in between",
                  looks.first->at.text(), whatToDo);
    tellWetAgain(context, found);
    return found.take();
}

}  // namespace rackbook::rules
