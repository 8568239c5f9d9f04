// The readiness of one impression after the other. Part of Readiness.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "calc/LightDays.h"
#include "calc/PlaceLight.h"
#include "calc/PullInk.h"
#include "calc/Readiness.h"
#include "calc/Stays.h"

namespace rackbook {

// Uses the same buffers for every impression. The history and the model must outlive it; nullptr
// asks for no doses.
class Assessment {
public:
    Assessment(const History& history, const HouseRules& rules, CivilMinute asOf,
               const LightModel* light)
        : m_history(history),
          m_asOf(asOf),
          m_model(light),
          m_lightDays(rules.value("lightDays")),
          m_lightDaysCareful(rules.value("lightDaysCareful")),
          m_drierLeastShare(rules.value("drierLeastShare")),
          m_lookChance(rules.value("lookChance")),
          m_returnedChance(rules.value("returnedChance")),
          m_colourLooks(static_cast<int>(rules.value("colourLooks"))),
          m_looksApart_days(rules.value("colourLooksApart_days")),
          m_light(history),
          m_ownInks(light ? std::vector<PullInk>() : inkOfPulls(history, rules)),
          m_inks(light ? light->inks : m_ownInks) {}

    ReadinessRow assess(std::size_t impression) {
        collectPulls(impression);
        collectLooks(impression);
        staysOf(m_history, impression, m_asOf, m_stays);
        const ReadinessRow start = startRow(impression);
        if (m_pulls.empty())
            return start;
        return judge(start);
    }

    ReadinessRow assessAt(std::size_t impression, CivilMinute asOf) {
        m_asOf = asOf;
        return assess(impression);
    }

private:
    void collectPulls(std::size_t impression);
    void collectLooks(std::size_t impression);
    ReadinessRow startRow(std::size_t impression) const;
    ReadinessRow judge(const ReadinessRow& start) const;
    ReadinessRow judgeFrom(const ReadinessRow& start, std::uint32_t pull) const;
    bool mustBeFelt(const ReadinessRow& row) const;
    ReadinessRow settleDoubt(ReadinessRow doubtful, const ReadinessRow& certain) const;

    TimeSpan lastRichStart(std::uint32_t last) const;
    void fillLightRule(ReadinessRow& row) const;
    void noteTurnedAgain(ReadinessRow& row) const;
    bool followsTheDark(const ReadinessRow& row, const HistoryLook& look) const;
    void walkStays(ReadinessRow& row, bool outOfHands) const;
    void countDays(ReadinessRow& row, const TimeSpan& from, CivilMinute until) const;
    template <class Visit>
    void passStays(LightDays& days, Visit&& visit) const;
    double daysHighAt(const TimeSpan& pulled, CivilMinute minute) const;
    void noteDark(ReadinessRow& row, const Stay& stay, bool continues) const;
    void notePutAway(ReadinessRow& row, const Stay& stay, const LightDays& days) const;
    void fillLooks(ReadinessRow& row, CivilMinute until) const;
    bool isOwn(const ReadinessRow& row, int look) const;
    void countTrueLook(ReadinessRow& row, const HistoryLook& look) const;
    void fillDose(ReadinessRow& row, CivilMinute until) const;
    GateFacts factsOf(const ReadinessRow& row) const;
    void fillForecast(ReadinessRow& row) const;
    bool wasReadyBy(const ReadinessRow& then, CivilMinute minute) const;
    static Verdict verdictOf(const ReadinessRow& row);
    LightState lightIn(const Stay& stay, CivilMinute minute) const;
    // Of what may have happened by that minute, that its date leaves open whether it had.
    static bool mayComeAfter(const TimeSpan& span, CivilMinute minute) {
        return isBadlyKnown(span) && span.latest > minute;
    }

    const TimeSpan& startOf(std::uint32_t pull) const { return m_history.pulls[pull].start; }
    int ordinalOf(std::uint32_t pull) const {
        const int layer = m_history.pulls[pull].layer;
        return layer < 0 ? 0 : m_history.layers[static_cast<std::size_t>(layer)].ordinal;
    }

    const History& m_history;
    CivilMinute m_asOf;
    const LightModel* m_model;
    double m_lightDays;
    double m_lightDaysCareful;
    double m_drierLeastShare;
    double m_lookChance;
    double m_returnedChance;
    int m_colourLooks;
    double m_looksApart_days;
    PlaceLight m_light;
    std::vector<PullInk> m_ownInks;  // where the model brings none
    const std::vector<PullInk>& m_inks;
    std::vector<std::uint32_t> m_pulls;  // of the impression at hand, in the order of time
    std::vector<std::uint32_t> m_looks;
    std::vector<Stay> m_stays;
};

}  // namespace rackbook
