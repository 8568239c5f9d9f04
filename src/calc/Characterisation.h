// What each lot does to light, learnt from drawdowns, and how far that can be trusted.
//
// Assumptions: wet film weight as recorded; the same film all through; K and S of a mix add up by
// mass; the surface alike on every film and on paper; readings taken once the colour had returned.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "calc/InkFilm.h"
#include "records/Lot.h"

namespace rackbook {

// One reading of a drawdown, and that of the bare backing; both as measured.
struct ReadingOver {
    Bands backing{};
    Bands film{};
};

struct DrawdownSample {
    std::string drawdown;           // id
    std::vector<LotShare> shares;   // of the ink, adding up to 1
    double filmWeight_gm2 = 0;      // above 0
    std::vector<ReadingOver> over;  // one or more
};

enum class OpticsSource {
    fitted,       // K and S by least squares
    oneReading,   // K alone; S is held at what is usual for its kind
    takenAsClear  // a base, drier or modifier without drawdowns: K and S taken as nothing
};

// Predicted against measured, under D50 and 2°.
struct PredictionCheck {
    std::size_t readings = 0;
    double mean_dE00 = 0;
    double most_dE00 = 0;
};

// One drawdown predicted from the others of its lot.
struct LeftOutDrawdown {
    std::size_t sample = 0;
    double laid_gm2 = 0;  // of the lot: its share of the film weight
    double mean_dE00 = 0;
    // Root mean squares over its readings: how far off the predictions are, and how far the lot
    // itself moves the colours there.
    double error_dE00 = 0;
    double effect_dE00 = 0;
};

struct LotOptics {
    int lot = -1;
    OpticsSource source = OpticsSource::fitted;
    InkOptics optics;
    std::vector<std::size_t> samples;  // that it was learnt from
    std::size_t readings = 0;          // of them
    // Each drawdown predicted from the others; nothing where the others leave nothing to fit.
    std::optional<PredictionCheck> leftOut;
    std::vector<LeftOutDrawdown> leftOutOf;  // that it is made of
    // How well it is known, as a share of what it does to a colour: the root of the sum of squared
    // errors over that of squared effects, of all drawdowns left out, so that those count in which
    // it does most. Nothing where none could be.
    std::optional<double> relativeError() const;
    PredictionCheck fit;  // the drawdowns themselves
    // Whether S shows in what was read: over a dark backing too, or in a film that hides.
    bool isScatteringSeen = false;
};

struct MixCheck {
    std::size_t sample = 0;
    PredictionCheck check;
    double effect_dE00 = 0;  // how far the film is from its lightest backing
};

// What S is pulled to where readings do not tell, in m²/g: a film of 10 g/m² would look milky over
// black with ink, almost clear with base (our guesses, no source).
constexpr double usualScatteringOfInk_m2g = 1e-2;
constexpr double usualScatteringOfRest_m2g = 1e-3;

struct Characterisation {
    FilmSurface surface;
    std::vector<LotOptics> lots;  // those that are known, by lot
    std::vector<MixCheck> mixes;  // drawdowns of several inks: none was fitted to them
    // Root mean square of error over effect of those; nothing where there are none.
    std::optional<double> mixRelativeError;
    std::vector<InkOptics> optics;  // by position of the lot; nothing does anything where unknown

    // Nothing where the lot is not known.
    const LotOptics* of(int lot) const;
};

// A drawdown tells of a lot where that is the only one of its kind in it and no lot of a later kind
// is: bases first, then modifiers, driers, inks. Drawdowns that hold inks which stay unknown are
// left out. Readings of one drawdown over one backing count as one, their mean. Throws InputError
// naming the drawdown where a film weight or a share is wrong.
Characterisation characterise(const std::vector<DrawdownSample>& samples,
                              const std::vector<LotKind>& lotKinds, const FilmSurface& surface);

}  // namespace rackbook
