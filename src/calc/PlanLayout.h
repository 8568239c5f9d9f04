// The stages of a plan before they are weighed: shares and least sizes. Part of WeighingPlan.
#pragma once

#include <optional>
#include <vector>

#include "calc/ShareAnalysis.h"
#include "calc/WeighingPlan.h"

namespace rackbook {

// The request with the lots that it uses numbered from 0: constituents.
struct PlanCase {
    explicit PlanCase(const PlanRequest& request);  // throws InputError where it is wrong

    std::vector<int> lots;        // by constituent: the position in the book, ascending
    std::vector<LotKind> kinds;   // by constituent
    std::vector<bool> isInk;      // by constituent
    std::vector<double> recipe;   // final share by constituent, then of all ink together
    std::vector<bool> isLimited;  // by the same columns
    BalanceFigures balance;
    double u_g = 0;  // of one weighing
    double limit = 0;
    double wanted_g = 0;
    double most_g = 0;  // no stage is made larger
};

// Exactly one of constituent and stage is set.
struct LayoutPart {
    int constituent = -1;
    int stage = -1;
    double share = 0;
};

struct LayoutStage {
    StageRole role = StageRole::recipe;
    int recipeStage = -1;
    double baseParts = 0;
    std::vector<LayoutPart> parts;
    double least_g = 0;  // it is made at least this large, even where less is taken
};

// The least mass of the last stage is that of the ink that is made.
using Layout = std::vector<LayoutStage>;

// The recipe as it stands, at the wanted mass.
Layout layoutOf(const Recipe& recipe, const PlanCase& planCase);

// A part of a stage that is let down in that stage's base first.
struct Tint {
    std::size_t stage = 0;
    std::size_t part = 0;
    double baseParts = 0;
};

// Nothing where a stage has too little base. Pre: no part twice.
std::optional<Layout> withTints(const Layout& layout, const std::vector<Tint>& tints,
                                const PlanCase& planCase);

// The lots of ink in one stage go into a stage of their own, with baseParts of base to one part of
// ink. Nothing where there are fewer than two of them, nothing else, or too little base.
std::optional<Layout> withColoursTogether(const Layout& layout, std::size_t stage, double baseParts,
                                          const PlanCase& planCase);

// The base lot of a stage with the largest share.
std::optional<std::size_t> basePartOf(const LayoutStage& stage, const PlanCase& planCase);

}  // namespace rackbook
