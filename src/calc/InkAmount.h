// How much ink a layer needs, with a film weight learnt from the studio's own pulls.
//
// ink = image area · coverage · sheets · (1 + spoil share) · film weight
//
// Film weight is wet, in g/m² of inked area. It is learnt from ink before minus ink after, so it
// holds what stays on the roller and the slab too: it says what must be put out, not what lies on
// the paper.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/Estimate.h"
#include "calc/MixStages.h"

namespace rackbook {

struct Quartiles {
    double lower = notKnown;
    double median = notKnown;
    double upper = notKnown;
};

// Sample quantiles of Hyndman and Fan (1996), type 7: linear between the order statistics, the k-th
// of n at (k − 1) / (n − 1). Nothing known for no values. Pre: none is NaN.
Quartiles quartilesOf(std::vector<double> values);

// What one pull says.
struct PulledFilm {
    int edition = -1;
    int layer = -1;
    double inkUsed_g = notKnown;
    int sheets = 0;              // every sheet printed, spoils among them
    double area_m2 = notKnown;   // of the image
    double coverage = notKnown;  // inked share of the image, 0 … 1
};

// Ink used over inked area, in g/m²; notKnown where any of it is missing or not above 0.
double filmWeightOf(const PulledFilm& pull);

enum class FilmWeightFrom { layer, edition, studio, commonPractice };

struct FilmWeight {
    // The median between the lower and the upper quartile; 3 … 15 without a best value where fewer
    // than three pulls say anything (hand relief printing; common practice, no source).
    Estimate weight_gm2;
    FilmWeightFrom from = FilmWeightFrom::commonPractice;
    std::size_t pulls = 0;  // that it was learnt from
};

constexpr std::size_t fewestPullsToLearnFrom = 3;

// From the pulls of the layer where at least three say something, else of the edition, else of all.
FilmWeight filmWeightFor(const std::vector<PulledFilm>& pulls, int edition, int layer);

struct InkQuestion {
    double area_m2 = notKnown;   // of the image
    double coverage = notKnown;  // 0 … 1
    int sheets = 0;              // good ones wanted
    double spoilShare = 0;       // spoils for each good sheet
    Estimate weight_gm2;
};

// In g. Any mass where the area or the coverage is not known. Throws InputError for an area that is
// not above 0, a coverage outside 0 … 1, sheets or a spoil share below 0 or not a number.
Estimate inkNeeded(const InkQuestion& question);

// The ink of one layer, and how much of it comes from each mix on the way.
struct LayerInk {
    Estimate ink_g;
    std::vector<int> mixes;        // each once
    std::vector<Estimate> shares;  // one for each mix
};

struct MixNeed {
    int mix = -1;
    Estimate mass_g;
    std::size_t layers = 0;  // that draw on it
};

// By mix ascending. A mix and a mix made from it both count: what is asked is how much of each
// there must be. Throws std::invalid_argument where a layer has not a share for each mix.
std::vector<MixNeed> inkByMix(const std::vector<LayerInk>& layers);

// The layer's ink from a mix, with the mixes that it was made from and their shares at the end;
// only the mix itself where the shares cannot be computed. A share counts what passed through at
// least once.
LayerInk inkFromMix(const MixStages& stages, std::size_t mix, const Estimate& ink_g);

}  // namespace rackbook
