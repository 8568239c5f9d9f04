// Recipes for a colour from the lots that are on the shelf.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/ColourMatch.h"
#include "calc/PredictionSpread.h"
#include "calc/Shading.h"
#include "commands/BalanceToUse.h"
#include "commands/ColourAim.h"
#include "commands/PlannedWeighing.h"

namespace rackbook {

struct MatchWanted {
    ColourAim aim;
    PaperGiven paper;
    FilmGiven film;
    std::size_t mostColours = 4;
    int base = -1;                        // position; -1: none
    std::vector<LotShare> held;           // drier
    std::optional<double> baseShare;      // of the whole ink, where it is fixed
    std::vector<int> without;             // lots not to be taken
    std::size_t recipe = 0;               // which of those found is laid out
    std::optional<double> mass_g;         // that is wanted of it
    std::optional<BalanceToUse> balance;  // to weigh it on
    double limit = 0;                     // see PlanRequest
    CivilMinute asOf = 0;
    std::vector<LotOnShelf> shelf;  // then
};

struct LotNotTaken {
    int lot = -1;
    std::string why;  // "finished", "no drawdown of it was measured", "as asked"
};

struct Match {
    MatchWanted wanted;
    ColourTarget target;
    std::vector<int> colours;  // lots that could be taken
    std::vector<LotNotTaken> notTaken;
    std::vector<MatchFound> found;          // the best first
    std::vector<PredictionSpread> spreads;  // one for each, without what weighing adds
    PredictionSpread laidOutSpread;         // of the one laid out, with its weighing
    std::vector<double> cost;               // one for each, of 100 g; notKnown without prices
    std::optional<PlannedWeighing> weighing;
    // The recipe laid out as the masses on the display make it; without weighing, as it was found.
    MatchFound laidOut;
    std::vector<std::string> warnings;  // whole sentences
    std::vector<Addition> shortages;    // lots that hold less than the plan asks for
};

// Throws InputError where nothing can be matched, or the plan cannot be made; UsageError where
// there are fewer recipes than the one to be laid out.
Match matchFor(const InkBook& ink, const ColourModel& model, MatchWanted wanted);

// The base on the shelf that was measured, none of `without`, and of which most is left; one that
// is known from a single reading only where there is no other. -1 where there is none.
int usualBase(const InkBook& ink, const ColourModel& model, const std::vector<LotOnShelf>& shelf,
              const std::vector<int>& without, CivilMinute asOf);

// What each lot holds by the book is less than what is asked of it.
std::vector<Addition> shortagesOf(const std::vector<LotOnShelf>& shelf,
                                  const std::vector<Addition>& asked);

// Why a lot could not be taken then; empty where it could.
std::string whyNotOnShelf(const LotOnShelf& lot, CivilMinute asOf);

}  // namespace rackbook
