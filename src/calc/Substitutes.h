// Whether the lots of a recipe still serve, and which lots can take the place of those that don't.
//
// Like for like only: an ink or modifier of exactly the same pigments, a drier of the same metals,
// another base. Everything else is a matter for the eye and the balance: colour matching.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/Estimate.h"
#include "calc/RecipeShares.h"
#include "records/History.h"
#include "records/Lot.h"

namespace rackbook {

// A lot as far as it matters here, by its position.
struct LotOnShelf {
    LotKind lotKind = LotKind::ink;
    std::string colourWords;
    std::vector<std::string> pigments;
    std::vector<DrierMetal> drierMetals;
    std::optional<TimeSpan> bought;
    std::optional<TimeSpan> opened;
    std::optional<TimeSpan> finished;
    Estimate left_g;
};

struct LotNeed {
    int lot = -1;
    double mass_g = 0;
};

// The grams of every lot in so much of a recipe.
std::vector<LotNeed> needsOf(const Recipe& recipe, double mass_g);

enum class LotAnswer {
    serves,
    replaced,
    tooLittle,            // the lot or its like are there, but no single one holds enough
    needsColourMatching,  // an ink without its like
    noneAlike             // a base, drier or modifier without its like
};

struct LotService {
    LotNeed need;
    LotAnswer answer = LotAnswer::serves;
    bool leftNotKnown = false;  // of the lot that serves or replaces: it may hold too little

    // Where it is replaced.
    int by = -1;
    double factor = 1;  // grams of it for a gram of the lot needed
    bool baseDiffers = false;
    bool contentNotStated = false;  // of a drier: the factor 1 is a guess
    bool metalsDiffer = false;      // the factor keeps the metals' sum, not each of them

    // Where there is too little, in grams of the lot needed.
    double short_g = 0;          // that the fullest lot lacks
    double shortTogether_g = 0;  // that all of them together lack; 0 where they do
    std::vector<int>
        together;  // those that hold it together, or all there are; the lot itself first
};

// One answer for each need, in their order. What is needed of one lot is not offered to another.
// on is the day of use. A lot is there from when it was bought, for certain, until it may be
// finished; without a date it is there. Throws InputError where a need names no lot or its mass is
// not a number of 0 or more.
std::vector<LotService> servicesOf(const std::vector<LotOnShelf>& shelf,
                                   const std::vector<LotNeed>& needs, const TimeSpan& on);

}  // namespace rackbook
