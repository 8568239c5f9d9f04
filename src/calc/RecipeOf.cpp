#include "calc/RecipeOf.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "calc/RecipeShares.h"

namespace rackbook {

namespace {

// Shares that differ by less are the same: above rounding, far below any balance.
constexpr double sameShare = 1e-12;

// Takes the drier out of the stages and gives it to the last.
class DrierMove {
public:
    DrierMove(std::vector<MixStage>& stages, const std::vector<LotKind>& lots)
        : m_stages(stages), m_lots(lots), m_other(stages.size(), 0) {}

    // Whether drier was in an earlier stage that held other things too.
    bool run() {
        const std::vector<LotShare> drier = drierOfWhole();
        if (drier.empty())
            return false;
        bool wasEarlier = false;
        for (std::size_t i = 0; i < m_stages.size(); ++i) {
            const bool heldDrier = takeOut(m_stages[i].parts, m_other[i]);
            const bool isLast = i + 1 == m_stages.size();
            wasEarlier = wasEarlier || (!isLast && heldDrier && m_other[i] > 0);
            if (!isLast)
                for (RecipePart& part : m_stages[i].parts)
                    part.share /= m_other[i];
        }
        for (const LotShare& share : drier)
            m_stages.back().parts.push_back({share.lot, -1, share.share});
        return wasEarlier;
    }

private:
    bool isDrier(const RecipePart& part) const {
        return part.lot >= 0 && m_lots[static_cast<std::size_t>(part.lot)] == LotKind::drier;
    }

    std::vector<LotShare> drierOfWhole() const {
        Recipe whole;
        for (const MixStage& stage : m_stages)
            whole.stages.push_back({{}, MixPurpose::stock, stage.parts});
        std::vector<LotShare> shares = flattened(whole);
        const auto other = std::remove_if(shares.begin(), shares.end(), [&](const LotShare& s) {
            return !isDrier({s.lot, -1, s.share}) || s.share <= 0;
        });
        shares.erase(other, shares.end());
        return shares;
    }

    // Leaves the parts that are not drier, as shares of the stage as it was; other is their sum.
    bool takeOut(std::vector<RecipePart>& parts, double& other) const {
        bool heldDrier = false;
        std::size_t kept = 0;
        for (RecipePart part : parts) {
            if (isDrier(part)) {
                heldDrier = true;
                continue;
            }
            if (part.stage >= 0)
                part.share *= m_other[static_cast<std::size_t>(part.stage)];
            if (part.share <= 0) {
                heldDrier = true;
                continue;
            }
            other += part.share;
            parts[kept++] = part;
        }
        parts.resize(kept);
        return heldDrier;
    }

    std::vector<MixStage>& m_stages;
    const std::vector<LotKind>& m_lots;
    std::vector<double> m_other;  // by stage, the share that is not drier
};

// Numbers the stages anew, leaving out those that are one source only or the same as another.
class StageMerge {
public:
    explicit StageMerge(const std::vector<MixStage>& stages) : m_stages(stages) {}

    std::vector<MixStage> run() {
        for (std::size_t i = 0; i < m_stages.size(); ++i)
            place(m_stages[i], i + 1 == m_stages.size());
        return std::move(m_kept);
    }

private:
    // What stands for a stage: a lot or a kept stage.
    struct Standing {
        int lot = -1;
        int stage = -1;
    };

    void place(const MixStage& stage, bool isLast) {
        MixStage merged{stage.mix, stage.lastAddition, partsOf(stage)};
        if (merged.parts.empty()) {
            // It was drier only, and nothing draws on it any more.
            m_standings.push_back({-1, -1});
            return;
        }
        const bool single = merged.parts.size() == 1;
        if (single && (!isLast || merged.parts.front().stage >= 0)) {
            m_standings.push_back({merged.parts.front().lot, merged.parts.front().stage});
            return;
        }
        const int same = isLast ? -1 : sameAs(merged);
        m_standings.push_back({-1, same >= 0 ? same : keep(std::move(merged))});
    }

    std::vector<RecipePart> partsOf(const MixStage& stage) const {
        std::map<std::pair<int, int>, double> shares;
        for (const RecipePart& part : stage.parts) {
            Standing standing{part.lot, -1};
            if (part.stage >= 0)
                standing = m_standings[static_cast<std::size_t>(part.stage)];
            shares[{standing.stage, standing.lot}] += part.share;
        }
        std::vector<RecipePart> parts;
        for (const auto& [source, share] : shares)
            parts.push_back({source.second, source.first, std::min(1.0, share)});
        return parts;
    }

    int keep(MixStage stage) {
        const auto place = static_cast<int>(m_kept.size());
        m_byFirstShare[stage.mix].emplace(stage.parts.front().share, place);
        m_kept.push_back(std::move(stage));
        return place;
    }

    int sameAs(const MixStage& stage) {
        const std::multimap<double, int>& kept = m_byFirstShare[stage.mix];
        const double first = stage.parts.front().share;
        for (auto i = kept.lower_bound(first - sameShare);
             i != kept.end() && i->first <= first + sameShare; ++i)
            if (areSame(m_kept[static_cast<std::size_t>(i->second)].parts, stage.parts))
                return i->second;
        return -1;
    }

    static bool areSame(const std::vector<RecipePart>& a, const std::vector<RecipePart>& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                          [](const RecipePart& x, const RecipePart& y) {
                              return x.lot == y.lot && x.stage == y.stage &&
                                     std::fabs(x.share - y.share) <= sameShare;
                          });
    }

    const std::vector<MixStage>& m_stages;
    std::vector<MixStage> m_kept;
    std::vector<Standing> m_standings;                         // by stage as it was
    std::map<int, std::multimap<double, int>> m_byFirstShare;  // by mix
};

}  // namespace

RecipeOf::RecipeOf(const History& history, std::vector<RecipeMix> mixes, CivilMinute upTo)
    : m_lots(history.lots), m_mixes(std::move(mixes)), m_stages(history, upTo) {}

RecipeFound RecipeOf::recipeOf(MixStagesFound found) const {
    RecipeFound result;
    result.problems = std::move(found.problems);
    if (!result.isComputable())
        return result;
    result.drierWasEarlier = DrierMove(found.stages, m_lots).run();
    for (MixStage& stage : StageMerge(found.stages).run()) {
        const RecipeMix& mix = m_mixes[static_cast<std::size_t>(stage.mix)];
        result.recipe.stages.push_back({mix.name, mix.purpose, std::move(stage.parts)});
        result.mixOfStage.push_back(stage.mix);
        result.stageAsOf.push_back(stage.lastAddition);
    }
    return result;
}

}  // namespace rackbook
