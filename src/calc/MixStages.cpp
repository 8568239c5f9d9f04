#include "calc/MixStages.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "calc/Blend.h"
#include "calc/EventMass.h"

namespace rackbook {

namespace {

constexpr double nothingLeft = 1e-15;

}  // namespace

// Works through the masses once, as LedgerRun does, and notes the weight of every addition.
class MixStagesRun {
public:
    MixStagesRun(const History& history, MixStages& stages)
        : m_history(history), m_stages(stages) {}

    void run(CivilMinute upTo) {
        const MixOrder order =
            mixOrder(m_history.weighings, m_history.pulls, m_history.mixCount, upTo);
        for (std::size_t mix = 0; mix < m_history.mixCount; ++mix)
            m_totals.emplace_back(order.additionsBegin[mix] < order.additionsBegin[mix + 1]
                                      ? Estimate::exactly(0)
                                      : Estimate::anyMass());
        for (std::size_t i = 0; i < order.events.size(); ++i)
            work(order.events[i], static_cast<std::uint32_t>(i));
    }

private:
    void work(LedgerEvent event, std::uint32_t i) {
        if (event.isPull) {
            const HistoryPull& pull = m_history.pulls[event.row];
            const auto portion = static_cast<std::size_t>(pull.portion);
            m_stages.m_portionOfPull[event.row] = pull.portion;
            m_stages.m_versionAtPull[event.row] = m_stages.m_additions[portion].size();
            take(portion, massOf(pull), event, i);
            return;
        }
        const HistoryWeighing& weighing = m_history.weighings[event.row];
        if (weighing.act == WeighingAct::add)
            add(weighing, event, i);
        else
            take(static_cast<std::size_t>(weighing.mix), massOf(weighing), event, i);
    }

    void add(const HistoryWeighing& weighing, LedgerEvent event, std::uint32_t i) {
        const auto mix = static_cast<std::size_t>(weighing.mix);
        MixStages::Addition addition;
        addition.weighing = event.row;
        addition.event = i;
        addition.at = weighing.at;
        addition.lot = weighing.lot;
        Estimate mass = massOf(weighing);
        if (weighing.fromMix >= 0) {
            const auto from = static_cast<std::size_t>(weighing.fromMix);
            addition.lot = -1;
            addition.fromMix = weighing.fromMix;
            addition.fromVersion = static_cast<std::uint32_t>(m_stages.m_additions[from].size());
            if (std::isinf(mass.high))
                mass.high = std::max(mass.low, m_totals[from].value().high);
            take(from, mass, event, i);
        }
        const Estimate weight = weightOf(mass, m_totals[mix].value());
        addition.weight = weight.best;
        addition.fills = weight.low == 1;
        m_totals[mix].add(mass);
        noteMissing(mix, mass, event, i);
        m_stages.m_additions[mix].push_back(addition);
    }

    void take(std::size_t mix, const Estimate& mass, LedgerEvent event, std::uint32_t i) {
        m_totals[mix].take(mass);
        noteMissing(mix, mass, event, i);
    }

    void noteMissing(std::size_t mix, const Estimate& mass, LedgerEvent event, std::uint32_t i) {
        if (!mass.isKnown())
            m_stages.m_missing[mix].push_back({i, event});
    }

    const History& m_history;
    MixStages& m_stages;
    std::vector<MixTotal> m_totals;
};

// Collects the stages that one mix draws on, the latest first. A stage is known by the event that
// made it, and draws only on what earlier events made.
class MixStagesSearch {
public:
    explicit MixStagesSearch(const MixStages& stages) : m_stages(stages) {}

    MixStagesFound run(int mix, std::size_t version) {
        want(mix, version);
        while (!m_wanted.empty()) {
            const auto latest = std::prev(m_wanted.end());
            const Wanted wanted = latest->second;
            m_wanted.erase(latest);
            collect(wanted);
        }
        MixStagesFound found;
        found.problems = problems();
        if (found.problems.empty())
            found.stages = numbered();
        return found;
    }

private:
    struct Wanted {
        int mix = -1;
        std::size_t version = 0;
    };

    // The event that made the stage; -1 where nothing was ever weighed in.
    int want(int mix, std::size_t version) {
        if (version == 0) {
            m_problems.insert({mix, MixObstacle::contentsNotRecorded, -1, -1});
            return -1;
        }
        const auto& additions = m_stages.m_additions[static_cast<std::size_t>(mix)];
        const auto event = static_cast<int>(additions[version - 1].event);
        m_wanted.insert({event, {mix, version}});
        return event;
    }

    // RecipePart::stage holds the event for now.
    void collect(const Wanted& wanted) {
        const auto& additions = m_stages.m_additions[static_cast<std::size_t>(wanted.mix)];
        MixStage stage{wanted.mix, additions[wanted.version - 1].at, {}};
        double rest = 1;
        for (std::size_t i = wanted.version; i-- > 0 && !(rest < nothingLeft);) {
            const MixStages::Addition& addition = additions[i];
            if (addition.weight == 0)
                continue;
            if (std::isnan(addition.weight))
                blameMissing(wanted.mix, addition.event);
            stage.parts.push_back(partFrom(wanted.mix, addition, rest * addition.weight));
            rest *= 1 - addition.weight;
        }
        mergeSources(stage.parts);
        m_found.push_back({static_cast<int>(additions[wanted.version - 1].event), stage});
    }

    RecipePart partFrom(int mix, const MixStages::Addition& addition, double share) {
        if (addition.fromMix >= 0)
            return {-1, want(addition.fromMix, addition.fromVersion), share};
        if (addition.lot < 0)
            m_problems.insert(
                {mix, MixObstacle::contentsNotRecorded, static_cast<int>(addition.weighing), -1});
        return {addition.lot, -1, share};
    }

    static void mergeSources(std::vector<RecipePart>& parts) {
        std::sort(parts.begin(), parts.end(), [](const RecipePart& a, const RecipePart& b) {
            return std::tie(a.stage, a.lot) < std::tie(b.stage, b.lot);
        });
        std::size_t kept = 0;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if (kept > 0 && parts[kept - 1].lot == parts[i].lot &&
                parts[kept - 1].stage == parts[i].stage)
                parts[kept - 1].share += parts[i].share;
            else
                parts[kept++] = parts[i];
        }
        parts.resize(kept);
    }

    // Every mass that was missing by then hides how much there was.
    void blameMissing(int mix, std::uint32_t event) {
        for (const MixStages::Missing& missing :
             m_stages.m_missing[static_cast<std::size_t>(mix)]) {
            if (missing.event > event)
                break;
            const auto row = static_cast<int>(missing.row.row);
            if (missing.row.isPull)
                m_problems.insert({mix, MixObstacle::inkOfPull, -1, row});
            else
                m_problems.insert({mix, MixObstacle::massOfWeighing, row, -1});
        }
    }

    std::vector<MixProblem> problems() const {
        std::vector<MixProblem> problems;
        for (const auto& [mix, obstacle, weighing, pull] : m_problems)
            problems.push_back({obstacle, mix, weighing, pull});
        return problems;
    }

    std::vector<MixStage> numbered() {
        std::vector<MixStage> stages;
        std::map<int, int> placeOf;
        std::reverse(m_found.begin(), m_found.end());
        for (Found& found : m_found) {
            for (RecipePart& part : found.stage.parts)
                if (part.stage >= 0)
                    part.stage = placeOf.at(part.stage);
            placeOf[found.event] = static_cast<int>(stages.size());
            stages.push_back(std::move(found.stage));
        }
        return stages;
    }

    struct Found {
        int event = -1;
        MixStage stage;
    };

    const MixStages& m_stages;
    std::map<int, Wanted> m_wanted;  // by event
    std::vector<Found> m_found;      // latest first
    std::set<std::tuple<int, MixObstacle, int, int>> m_problems;
};

MixStages::MixStages(const History& history, CivilMinute upTo)
    : m_additions(history.mixCount),
      m_missing(history.mixCount),
      m_portionOfPull(history.pulls.size(), -1),
      m_versionAtPull(history.pulls.size(), 0) {
    MixStagesRun(history, *this).run(upTo);
}

MixStagesFound MixStages::atPull(std::size_t pull) const {
    if (m_portionOfPull[pull] < 0)
        return {{}, {{MixObstacle::contentsNotRecorded, -1, -1, static_cast<int>(pull)}}};
    return found(m_portionOfPull[pull], m_versionAtPull[pull]);
}

MixStagesFound MixStages::atEnd(std::size_t mix) const {
    return found(static_cast<int>(mix), m_additions[mix].size());
}

MixStagesFound MixStages::found(int mix, std::size_t version) const {
    return MixStagesSearch(*this).run(mix, version);
}

std::vector<MixShare> sharesByMix(const std::vector<MixStage>& stages) {
    std::set<int> mixes;
    for (const MixStage& stage : stages)
        mixes.insert(stage.mix);
    std::vector<MixShare> shares;
    std::vector<double> through(stages.size());
    for (const int mix : mixes) {
        for (std::size_t i = 0; i < stages.size(); ++i) {
            through[i] = stages[i].mix == mix ? 1 : 0;
            for (const RecipePart& part : stages[i].parts)
                if (part.stage >= 0 && stages[i].mix != mix)
                    through[i] += part.share * through[static_cast<std::size_t>(part.stage)];
        }
        shares.push_back({mix, std::min(1.0, through.back())});
    }
    return shares;
}

}  // namespace rackbook
