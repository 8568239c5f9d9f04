// The studio's inks as its drawdowns characterise them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/Characterisation.h"
#include "calc/MixLedger.h"
#include "commands/InkBook.h"

namespace rackbook {

struct DrawdownLeftOut {
    std::string drawdown;  // id
    std::string why;       // "its film weight is not recorded"
};

struct ColourModel {
    std::vector<DrawdownSample> samples;
    std::vector<DrawdownLeftOut> leftOut;  // that have a spectrum and still teach nothing
    // Drawdowns rich in base, also those known as CIELAB only, that were read before the studio's
    // days in light were over: they may still have been brown.
    std::vector<std::string> readEarly;
    Characterisation inks;
};

// By the house rules.
FilmSurface surfaceOf(const HouseRules& rules);

ColourModel colourModelOf(const InkBook& ink);

// That a drawdown was read too early for its ink, as in ColourModel::readEarly; empty where it was
// not, or where what its mix was made of is not known.
std::string readEarlyWords(const InkBook& ink, const Reading& reading);

// The latest reading of a bare paper of that name that holds a spectrum, over that backing if there
// is one, else over any. Nothing where it was never measured.
const Reading* paperReading(const InkBook& ink, const std::string& paper,
                            const std::optional<Backing>& backing);

// The spectrum of a reading, without the gloss of the surface: instruments whose geometry begins
// with "di" see it (CIE 15), others do not. Throws InputError naming the reading where it cannot
// be used. Pre: it holds one.
Bands bandsIn(const Reading& reading, const FilmSurface& surface);

// The shares of every lot in what was laid down: in the pull with most good sheets of which they
// are known, else in the layer's mix as it is then. Nothing where they are not known.
std::optional<std::vector<LotShare>> sharesOfLayer(const InkBook& ink, const MixLedger& ledger,
                                                   const Layer& layer);

// The shares of every lot in a mix as it was then. Throws InputError where they are not known.
std::vector<LotShare> sharesOfMix(const InkBook& ink, int mix, CivilMinute asOf);

}  // namespace rackbook
