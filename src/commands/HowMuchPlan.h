// How much ink layers of an edition need, and of which mixes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/InkAmount.h"
#include "commands/InkBook.h"
#include "commands/LayerFilm.h"

namespace rackbook {

struct LayerNeed {
    int layer = -1;  // position
    double coverage = 1;
    bool coverageAssumed = false;  // none is recorded: all of the image is taken as inked
    LayerFilm film;
    Estimate ink_g;
    int mix = -1;  // that the layer is printed from
};

struct MixInNeed {
    MixNeed need;
    Estimate there_g;  // now, by the book
};

struct HowMuch {
    const Edition* edition = nullptr;
    int sheets = 0;
    std::string sheetsWords;  // where their number comes from
    int kept = 0;             // sheets of the edition that are kept
    double spoilShare = 0;
    bool spoilGiven = false;
    std::vector<LayerNeed> layers;  // in printing order
    std::vector<int> leftOut;       // places in the printing order of layers pulled already
    std::vector<MixInNeed> mixes;
    std::vector<int> closedMixes;  // of layers; what they are made of cannot be computed
    Estimate total_g = Estimate::exactly(0);
};

struct InkWanted {
    std::string edition;       // id
    std::optional<int> layer;  // position; without it those that were not pulled yet, or
    bool all = false;          // all
    std::optional<int> sheets;
    std::optional<double> spoilShare;
    std::optional<double> weight_gm2;
    bool aimed = false;  // the layers' own aim counts before what was learnt
};

// The records must outlive the result. Throws UsageError where the image size is not recorded, or
// the number of sheets neither given nor recorded.
HowMuch howMuch(const InkBook& ink, const InkWanted& wanted, CivilMinute asOf);

}  // namespace rackbook
