// How to weigh out an ink so that each colour in it comes out as near as wanted, with the least
// waste. Masses in g, shares of the mass between 0 and 1.
//
// Every mass in a plan is one that the balance can show; the largest part of a stage, and of
// equally large ones a base, takes up what rounding leaves over, so that totals are whole. What
// rounding does to the shares is not hidden: a share is within the limit where |deviation from the
// recipe| + 2 u is no more than limit · share, u being its standard uncertainty
// (calc/ShareAnalysis.h) and 2 the coverage factor (JCGM 100:2008, 6.2 and 6.3). The limit counts
// for every lot of ink and for all ink together.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "calc/BalanceReading.h"
#include "calc/Recipe.h"
#include "records/EnumText.h"
#include "records/Lot.h"

namespace rackbook {

constexpr double coverageFactor = 2;

struct PlanRequest {
    Recipe recipe;
    std::vector<LotKind> lotKinds;  // by position of the lot in the book
    double wanted_g = 0;            // above 0
    BalanceFigures balance;
    double limit = 0;        // on the relative expanded uncertainty; above 0, below 1
    double mostTimes = 100;  // no stage is made larger than this many times wanted_g; at least 1
};

enum class PlanKind {
    asItStands,          // the recipe at the wanted mass
    largerBatch,         // the same, all of it larger
    largerEarlierStage,  // earlier stages larger than needed; what is over is left
    tint,                // weak parts let down in base first, 1 part in baseParts of base
    coloursTogether      // the colours of a stage weighed together first, and part of that taken
};
template <>
struct EnumText<PlanKind> {
    static constexpr const char* names[] = {"asItStands", "largerBatch", "largerEarlierStage",
                                            "tint", "coloursTogether"};
};

enum class StageRole { recipe, tint, coloursTogether };
template <>
struct EnumText<StageRole> {
    static constexpr const char* names[] = {"recipe", "tint", "coloursTogether"};
};

// Exactly one of lot and stage is set.
struct PlanPart {
    int lot = -1;
    int stage = -1;     // position in WeighingPlan::stages
    double share = 0;   // before rounding
    double mass_g = 0;  // as the display shows it
};

struct PlanStage {
    StageRole role = StageRole::recipe;
    int recipeStage = -1;         // the stage of the recipe that it is, or that it goes into
    double baseParts = 0;         // parts of base to one part of the rest; 0 where role is recipe
    std::vector<PlanPart> parts;  // in weighing order, see calc/WeighingOrder.h
    double total_g = 0;
    double taken_g = 0;     // into later stages; of the last stage: what is wanted
    double leftOver_g = 0;  // the rest
};

// One share of the final ink.
struct PlannedShare {
    int lot = -1;            // -1: all ink together
    double recipe = 0;       // as the recipe has it
    double planned = 0;      // as the rounded masses make it
    double uncertainty = 0;  // standard uncertainty of planned
    bool isLimited = false;  // ink; base, driers and modifiers are told, not limited

    // Relative to the recipe's share, which is above 0.
    double deviation() const { return (planned - recipe) / recipe; }
    double expandedUncertainty() const { return coverageFactor * uncertainty / recipe; }
};

enum class PlanFault {
    massShowsAsZero,     // of one part: stage and part are set
    roundedTooFar,       // of one share: the deviation alone is beyond the limit
    uncertaintyTooLarge  // of one share: the expanded uncertainty, with the deviation
};
template <>
struct EnumText<PlanFault> {
    static constexpr const char* names[] = {"massShowsAsZero", "roundedTooFar",
                                            "uncertaintyTooLarge"};
};

struct PlanComplaint {
    PlanFault fault = PlanFault::massShowsAsZero;
    int stage = -1;
    int part = -1;
    int lot = -1;  // of the share; -1: all ink together
};

// Everything that is made and not used.
struct PlanWaste {
    double total_g = 0;
    double ink_g = 0;    // what of it is ink …
    double base_g = 0;   // … and base
    double other_g = 0;  // driers and modifiers
};

struct WeighingPlan {
    PlanKind kind = PlanKind::asItStands;
    std::vector<PlanStage> stages;   // in the order in which they are made
    std::vector<PlannedShare> lots;  // of the final ink, by lot
    PlannedShare colour;             // all ink together; recipe is 0 where there is none
    PlanWaste waste;
    std::vector<PlanComplaint> complaints;  // why it is not within the limit

    bool isWithinLimit() const { return complaints.empty(); }
};

struct WeighingPlans {
    std::vector<WeighingPlan> plans;    // by waste, then by number of stages
    std::optional<std::size_t> chosen;  // the first that is within the limit
    double smallestBatch_g = 0;         // see smallestBatch_g
};

// The recipe as it stands is always among the plans; where it is within the limit, it is the only
// one. Other plans are there only where they are within the limit. One plan a kind, but one of
// coloursTogether for each stage where that can be done. Throws InputError where the request is
// wrong, or where drier goes into a stage that is no portion: drier starts the clock.
WeighingPlans weighingPlans(const PlanRequest& request);

// The mass at which the recipe as it stands, weighed without rounding and with nothing left over,
// just keeps the limit. The relative uncertainty of a share goes as one over the mass of the batch,
// so it is max over the limited shares of 2 · u(1 g) / (limit · share) · 1 g. 0 where no share is
// limited. Throws as weighingPlans does.
double smallestBatch_g(const PlanRequest& request);

}  // namespace rackbook
