// What it takes to make an ink again: the recipe as it was, the lots that serve now, and the plans
// for weighing it.
#pragma once

#include <string>
#include <vector>

#include "commands/InkBook.h"
#include "commands/PlannedWeighing.h"

namespace rackbook {

// What is to be made again.
struct WantedInk {
    std::string words;       // "layer 4 of EEL (Warm apricot)"
    int mix = -1;            // position of the mix asked for, or
    std::vector<int> pulls;  // positions of the pulls of the layer or the one pull asked for
};

// An earlier stage that is still there as it was then.
struct StageInJar {
    std::size_t stage = 0;  // of the recipe
    Estimate left_g;
    double needed_g = notKnown;  // that the plan takes of it; notKnown where no step makes it

    bool isEnough() const { return left_g.best >= needed_g - 1e-6; }
};

struct OtherPull {
    std::string pull;           // id
    bool isComputable = true;   // what it laid down is known
    double mostDifference = 0;  // of a lot's share from that in the recipe, as a share of the ink
};

struct LotShortage {
    int lot = -1;
    double needed_g = 0;
    Estimate left_g;
};

struct MixAgain {
    WantedInk wanted;
    int fromPull = -1;  // position of the pull that the recipe is of; -1 for a mix
    RecipeFound found;
    std::vector<LotService> services;  // of the lots in the recipe as it was
    std::vector<StageInJar> inJars;
    std::vector<OtherPull> others;
    PlannedWeighing weighing;            // of the recipe with the lots that serve now
    std::vector<LotShortage> shortages;  // lots that the plan to follow asks more of than is left

    // A lot is missing, or there is too little of it.
    bool lacksLots() const;
};

// Positions, in the order of recording.
std::vector<int> pullsOfLayer(const InkBook& ink, const Layer& layer);

// Positions of the pulls, those that printed most good sheets first.
std::vector<int> byGoodSheets(const InkBook& ink, std::vector<int> pulls);

// `words` names a mix, a layer or a pull by id, or an edition by code with `layer`, its place in
// the printing order. Throws UsageError with the nearest name.
WantedInk wantedInkNamed(const BookFile& book, const InkBook& ink, const std::string& words,
                         const std::optional<std::string>& layer);

WantedInk wantedMix(const InkBook& ink, int mix);
WantedInk wantedPull(const InkBook& ink, int pull);
// Of its pulls, else of the mix that it names. Throws UsageError where it has neither.
WantedInk wantedLayer(const InkBook& ink, const Layer& layer);

// Why the recipe cannot be computed: which record lacks what. Empty where it can.
std::string obstaclesTo(const InkBook& ink, const WantedInk& wanted);

// Of a layer, the recipe is that of the pull that printed most good sheets. Throws InputError where
// what was laid down cannot be computed; the message says which record lacks what.
// `request` comes without recipe and lot kinds.
MixAgain mixAgain(const InkBook& ink, const WantedInk& wanted, PlanRequest request,
                  const TimeSpan& on);

}  // namespace rackbook
