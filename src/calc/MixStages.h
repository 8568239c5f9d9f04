// What a mix was made of, step by step: the contents of every mix on the way at the moment when it
// was taken from. The shares are the best values of MixLedger, kept apart by source.
//
// The share of an addition i in what n additions made is w(i) · Π (1 − w(j)), j = i + 1 … n, where
// w = m / (T + m) is the share of an added mass m in the mass after it; what is taken out in
// between changes T only. Additions whose shares together fall below 1e-15 are left out.
#pragma once

#include <cstdint>
#include <vector>

#include "calc/MixOrder.h"
#include "calc/Recipe.h"
#include "records/History.h"

namespace rackbook {

// Why the shares cannot be computed.
enum class MixObstacle {
    massOfWeighing,      // a weighing into or out of the mix lacks its mass
    inkOfPull,           // a pull took an unrecorded mass before more was added
    contentsNotRecorded  // the mix, or something in it, was never weighed in
};

struct MixProblem {
    MixObstacle obstacle = MixObstacle::contentsNotRecorded;
    int mix = -1;       // whose contents it hides; -1 where no portion is recorded
    int weighing = -1;  // position, where one is at fault
    int pull = -1;
};

// A mix as it was after one of its additions.
struct MixStage {
    int mix = -1;
    TimeSpan lastAddition;
    std::vector<RecipePart> parts;  // lots first, then earlier stages; each source once
};

struct MixStagesFound {
    std::vector<MixStage> stages;  // each after those it draws on; the last is the mix asked for
    std::vector<MixProblem> problems;  // where there are any, there are no stages
};

class MixStages {
public:
    // Events later than upTo are left out. The history is read here only.
    explicit MixStages(const History& history, CivilMinute upTo = endOfTime);

    // The portion as it was when the pull began.
    MixStagesFound atPull(std::size_t pull) const;
    MixStagesFound atEnd(std::size_t mix) const;

    struct Addition {
        std::uint32_t weighing = 0;
        std::uint32_t event = 0;  // place in the order of events
        double weight = 0;        // share in the mass after it; notKnown where masses are missing
        bool fills = false;       // nothing was there before, however the unknown masses turn out
        TimeSpan at;
        int lot = -1;
        int fromMix = -1;
        std::uint32_t fromVersion = 0;  // how many additions that mix had had
    };
    // In the order of events.
    const std::vector<Addition>& additionsTo(std::size_t mix) const { return m_additions[mix]; }

private:
    friend class MixStagesRun;
    friend class MixStagesSearch;

    struct Missing {
        std::uint32_t event = 0;
        LedgerEvent row;
    };
    MixStagesFound found(int mix, std::size_t version) const;

    std::vector<std::vector<Addition>> m_additions;  // by mix
    std::vector<std::vector<Missing>> m_missing;     // by mix, masses that lack a best value
    std::vector<int> m_portionOfPull;                // -1 too where the pull is later than upTo
    std::vector<std::size_t> m_versionAtPull;
};

struct MixShare {
    int mix = -1;
    double share = 0;  // of the mass, above 0, at most 1
};

// The share of the last stage that passed through each mix at least once, by mix; the mix itself
// has share 1. Nothing where there are no stages.
std::vector<MixShare> sharesByMix(const std::vector<MixStage>& stages);

}  // namespace rackbook
