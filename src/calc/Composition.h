// What an ink is made of, by what the lots are: pigments, base, drier, modifier, and the metals of
// the drier.
#pragma once

#include <string>
#include <vector>

#include "calc/MixLedger.h"
#include "records/Lot.h"

namespace rackbook {

// Shares are of the whole ink, 0 … 1.
struct CompositionPart {
    LotKind lotKind = LotKind::ink;
    std::vector<std::string> pigments;  // of ink: those of the lot, sorted; empty where not stated
    Estimate share;
};

struct MetalPart {
    std::string metal;
    Estimate share;
};

struct Composition {
    // Inks of the same pigments are one part, all base, all drier and all modifier one each; the
    // largest first. How much of each pigment is in a lot of several is not known.
    std::vector<CompositionPart> parts;
    std::vector<MetalPart> metals;   // by name; of driers that state their content
    bool hasUnstatedMetals = false;  // a drier in it states no metal, or a metal without content
};

// The bounds of a part are the sums of the bounds of its lots, and no more than 1: they hold, but
// may be wide.
// Pre: the constituents are positions in lots.
Composition compositionOf(const MixContents& contents, const std::vector<Lot>& lots);

}  // namespace rackbook
