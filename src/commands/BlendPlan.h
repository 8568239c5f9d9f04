// Two mixes blended to hold a wanted share of a kind of lot or of one lot.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/Alligation.h"
#include "calc/MixLedger.h"
#include "commands/BalanceGiven.h"
#include "commands/InkBook.h"

namespace rackbook {

// What the share is of: a kind of lot, or one lot.
struct SharedThing {
    std::optional<LotKind> lotKind;
    int lot = -1;
    std::string words;  // "base", "field-rose-1"
};

// "base", "drier", "ink", "modifier", or the id of a lot; lot:ID where the id is one of these
// words. Throws UsageError.
SharedThing sharedThingNamed(const InkBook& ink, const std::string& words);

struct MixToBlend {
    int mix = -1;
    double mass_g = 0;        // as the display shows it
    Estimate share;           // of the thing
    Estimate there_g;         // by the book
    bool holdsEnough = true;  // as far as the book knows
};

struct KindShares {
    LotKind lotKind = LotKind::ink;
    Estimate first;
    Estimate second;
    Estimate blend;
};

struct Blend {
    SharedThing thing;
    double target = 0;
    MixToBlend first;
    MixToBlend second;
    double total_g = 0;
    Estimate share;                 // that results from the masses as shown
    std::vector<KindShares> kinds;  // that can be in it
    bool mayHoldDrier = false;
};

struct BlendWanted {
    int first = -1;  // mixes
    int second = -1;
    SharedThing thing;
    double target = 0;
    std::optional<double> make_g;  // of both together, or
    std::optional<double> into_g;  // of the first, into which the second goes; exactly one is set
};

// Throws UsageError where the two cannot reach the target or a mass would show as nothing,
// InputError where the share in one of them is not known.
Blend blendOf(const InkBook& ink, const BlendWanted& wanted,
              const std::optional<BalanceGiven>& balance, CivilMinute asOf);

}  // namespace rackbook
