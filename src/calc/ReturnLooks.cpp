#include "calc/ReturnLooks.h"

#include <algorithm>
#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <tuple>

#include "calc/LightDays.h"
#include "calc/PlaceLight.h"
#include "calc/PullsLearntFrom.h"

namespace rackbook {

namespace {

class Gathering {
public:
    Gathering(const History& history, const std::vector<PullInk>& inks, const HouseRules& rules,
              DoseLedger& ledger, CivilMinute asOf)
        : m_history(history),
          m_inks(inks),
          m_lightDays(rules.value("lightDays")),
          m_light(history),
          m_ledger(ledger),
          m_asOf(asOf),
          m_from(firstMinuteLearntFrom()) {}

    std::vector<ReturnLook> run() {
        for (std::size_t i = 0; i < m_history.impressions.size(); ++i)
            if (m_history.looksOf.begin(i) != m_history.looksOf.end(i) && isRecent(i))
                if (const std::optional<std::uint32_t> pull = lastRichPull(i))
                    gather(static_cast<std::uint32_t>(i), *pull);
        return std::move(m_found);
    }

private:
    // At which the first of the latest pulls began.
    CivilMinute firstMinuteLearntFrom() const {
        std::vector<CivilMinute> starts;
        for (const HistoryPull& pull : m_history.pulls)
            if (pull.start.earliest <= m_asOf)
                starts.push_back(pull.start.earliest);
        if (starts.size() <= pullsLearntFrom)
            return beginningOfTime;
        const auto last = starts.begin() + static_cast<std::ptrdiff_t>(pullsLearntFrom) - 1;
        std::nth_element(starts.begin(), last, starts.end(), std::greater<>());
        return *last;
    }

    bool isRecent(std::size_t impression) const {
        return std::any_of(m_history.pullsOf.begin(impression), m_history.pullsOf.end(impression),
                           [&](std::uint32_t pull) {
                               const CivilMinute start = startOf(pull).earliest;
                               return start >= m_from && start <= m_asOf;
                           }) ||
               m_from == beginningOfTime;
    }

    const TimeSpan& startOf(std::uint32_t pull) const { return m_history.pulls[pull].start; }

    // Nothing where one that may be rich came to it too, or its day is badly known.
    std::optional<std::uint32_t> lastRichPull(std::size_t impression) const {
        const LastRichPull last = lastRichPullOf(m_history, m_inks, impression, m_asOf);
        return last.isDoubtful ? std::nullopt : last.pull;
    }

    void sortLooks(std::size_t impression, std::uint32_t pull) {
        m_looks.clear();
        const std::uint32_t* end = m_history.looksOf.end(impression);
        for (const std::uint32_t* row = m_history.looksOf.begin(impression); row != end; ++row) {
            const HistoryLook& look = m_history.looks[*row];
            if (look.hasColour && look.at.earliest > startOf(pull).latest &&
                look.at.latest <= m_asOf && !isBadlyKnown(look.at))
                m_looks.push_back(*row);
        }
        std::stable_sort(m_looks.begin(), m_looks.end(), [&](std::uint32_t a, std::uint32_t b) {
            return m_history.looks[a].at.earliest < m_history.looks[b].at.earliest;
        });
    }

    double daysAt(std::uint32_t pull, CivilMinute minute) const {
        LightDays days(m_light, startOf(pull), minute);
        for (const Stay& stay : m_stays)
            days.passStay(stay);
        return days.low();
    }

    double doseAt(std::uint32_t pull, const HistoryLook& look) {
        return m_ledger.sumSince(m_stays, startOf(pull), look.at.latest).sunnyDays.best;
    }

    void gather(std::uint32_t impression, std::uint32_t pull) {
        sortLooks(impression, pull);
        if (m_looks.empty())
            return;
        staysOf(m_history, impression, m_asOf, m_stays);
        ReturnLook found;
        found.pull = pull;
        for (const std::uint32_t row : m_looks) {
            const HistoryLook& look = m_history.looks[row];
            if (look.colour != LookColour::trueColour) {
                found.notYetLook = static_cast<int>(row);
                continue;
            }
            if (found.notYetLook < 0 && daysAt(pull, look.at.latest) < m_lightDays)
                continue;
            found.trueLook = static_cast<int>(row);
            break;
        }
        observe(found, impression);
    }

    void observe(ReturnLook& found, std::uint32_t impression) {
        ThresholdObservation& observed = found.observed;
        if (found.notYetLook >= 0)
            observed.low_sunnyDays = doseAt(found.pull, lookAt(found.notYetLook));
        observed.high_sunnyDays = found.trueLook >= 0 ? doseAt(found.pull, lookAt(found.trueLook))
                                                      : std::numeric_limits<double>::infinity();
        const bool saysNothing = observed.low_sunnyDays <= 0 && found.trueLook < 0;
        // NaN fails the comparison.
        if (saysNothing || !(observed.low_sunnyDays < observed.high_sunnyDays))
            return;
        // Not by the looks: those of one batch may stand in a record for each print.
        const auto key =
            std::make_tuple(found.pull, observed.low_sunnyDays, observed.high_sunnyDays);
        const auto known = m_positions.find(key);
        if (known != m_positions.end()) {
            m_found[known->second].impressions.push_back(impression);
            return;
        }
        m_positions.emplace(key, m_found.size());
        found.impressions = {impression};
        m_found.push_back(found);
    }

    const HistoryLook& lookAt(int look) const {
        return m_history.looks[static_cast<std::size_t>(look)];
    }

    const History& m_history;
    const std::vector<PullInk>& m_inks;
    double m_lightDays;
    PlaceLight m_light;
    DoseLedger& m_ledger;
    CivilMinute m_asOf;
    CivilMinute m_from;
    std::vector<std::uint32_t> m_looks;
    std::vector<Stay> m_stays;
    std::map<std::tuple<std::uint32_t, double, double>, std::size_t> m_positions;
    std::vector<ReturnLook> m_found;
};

}  // namespace

std::vector<ReturnLook> returnLooksOf(const History& history, const std::vector<PullInk>& inks,
                                      const HouseRules& rules, DoseLedger& ledger,
                                      CivilMinute asOf) {
    return Gathering(history, inks, rules, ledger, asOf).run();
}

}  // namespace rackbook
