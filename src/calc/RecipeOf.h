// The recipe of an ink as it was: of a portion when its pull began, or of a mix at the end.
//
// Each mix on the way is a stage, and as many stages as it had different contents when it was taken
// from. A stage that draws on one source only is merged into that source. Drier goes into the last
// stage only, whatever stage it was weighed into, with the same share of the finished ink: a heap
// with drier does not keep. Shares are best values (calc/MixStages.h).
#pragma once

#include <string>
#include <vector>

#include "calc/MixStages.h"
#include "calc/Recipe.h"
#include "records/History.h"

namespace rackbook {

// What names a stage, by position of the mix.
struct RecipeMix {
    std::string name;
    MixPurpose purpose = MixPurpose::stock;
};

struct RecipeFound {
    Recipe recipe;                     // no stages where there are problems
    std::vector<int> mixOfStage;       // the mix that each stage repeats
    std::vector<TimeSpan> stageAsOf;   // … as it was after its addition of then
    bool drierWasEarlier = false;      // drier was in an earlier stage, together with other ink
    std::vector<MixProblem> problems;  // every reason why it cannot be computed

    bool isComputable() const { return problems.empty(); }
};

class RecipeOf {
public:
    // Events later than upTo are left out. Pre: mixes has an entry for each of the history's mixes.
    RecipeOf(const History& history, std::vector<RecipeMix> mixes, CivilMinute upTo = endOfTime);

    RecipeFound atPull(std::size_t pull) const { return recipeOf(m_stages.atPull(pull)); }
    RecipeFound atEnd(std::size_t mix) const { return recipeOf(m_stages.atEnd(mix)); }

    const MixStages& stages() const { return m_stages; }

private:
    RecipeFound recipeOf(MixStagesFound found) const;

    std::vector<LotKind> m_lots;
    std::vector<RecipeMix> m_mixes;
    MixStages m_stages;
};

}  // namespace rackbook
