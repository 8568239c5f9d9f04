// What a recipe card is made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Substitutes.h"
#include "calc/WeighingPlan.h"
#include "records/Drawdown.h"
#include "records/Edition.h"
#include "records/HouseRules.h"
#include "records/Layer.h"
#include "records/Mix.h"
#include "records/Reading.h"
#include "sheets/EditionFacts.h"
#include "sheets/PageModel.h"
#include "sheets/Plot.h"

namespace rackbook {

// A run of the layer.
struct RecipeRun {
    EdtfDate start = EdtfDate::ofMinute(0);
    std::string portion;  // its name; empty where none is recorded
    int goodSheets = 0;
    bool isSource = false;      // the recipe is that of its ink
    bool isComputable = true;   // what it laid down is known
    double mostDifference = 0;  // of a lot's share from that in the recipe, as a share of the ink
};

struct RecipeBalance {
    std::string name;  // empty where it is not recorded
    BalanceFigures figures;
    bool repeatabilityAssumed = false;  // as large as a step
    std::optional<double> capacity_g;
    int decimals = 1;  // of what it shows
};

// An earlier stage that is still there as it was then.
struct RecipeJar {
    std::string name;
    Estimate left_g;
    double needed_g = notKnown;  // that the plan takes of it; notKnown where no step makes it
    bool isEnough = false;
};

struct RecipeShortage {
    int lot = -1;
    double needed_g = 0;
    Estimate left_g;
};

struct RecipeWeighing {
    PlanRequest request;  // of the recipe with the lots that serve now
    WeighingPlans plans;
    WeighingPlan plan;  // to follow: the chosen one, else the recipe as it stands
    RecipeBalance balance;
    RuleInForce limitRule;
    std::vector<LotService> services;  // of the lots in the recipe as it was
    std::vector<RecipeShortage> shortages;
    std::vector<RecipeJar> jars;
    bool drierWasEarlier = false;
};

struct RecipeColour {
    Reading reading;
    std::optional<Drawdown> drawdown;  // that was measured
    bool isAim = false;                // the layer is held to it
    std::optional<LabColour> lab;      // under D50, 2° observer
    std::vector<PlotPoint> curve;  // reflectance 0 … 1 over nm; empty where no spectrum was read
};

struct RecipeFacts {
    CivilMinute asOf = 0;
    std::string studio;
    std::optional<Edition> edition;
    std::optional<Layer> layer;
    std::optional<Mix> mix;       // asked for, or that the layer is printed from
    std::vector<RecipeRun> runs;  // of the layer, or the one asked for; by time
    std::vector<Lot> lots;        // all of the book's, by position

    std::optional<RecipeWeighing> weighing;
    std::string whyNot;       // a sentence in English: which records lack what; empty where …
    bool namesNoMix = false;  // … the layer has no run and no mix either

    InkFacts ink;  // as it was
    std::optional<RecipeColour> colour;
    Estimate filmLaid_gm2;  // wet; see LayerFacts
};

}  // namespace rackbook
