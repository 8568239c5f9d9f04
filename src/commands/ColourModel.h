// The studio's inks as its drawdowns characterise them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/Characterisation.h"
#include "calc/RecipeOf.h"
#include "commands/InkBook.h"

namespace rackbook {

struct UnusedReading {
    std::string reading;   // id
    std::string drawdown;  // id
    std::string why;       // "its film weight is not recorded"
};

struct ColourModel {
    std::vector<DrawdownSample> samples;
    std::vector<UnusedReading> unused;  // spectra of drawdowns that teach nothing
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

// The latest reading of a bare paper of that name that holds a spectrum, over that backing; where
// one of the two states none, they count as the same, after those that state it. Nothing where it
// was never measured so.
const Reading* paperReading(const InkBook& ink, const std::string& paper,
                            const std::optional<Backing>& backing);

// Whether the geometry is one of those that include the gloss: "di:8" or "8:di" (CIE 15), or say
// "included". Anything else counts as leaving it out.
bool seesGloss(const Reading& reading);

// Whether it is of a sphere and leaves open which of the two it is.
bool leavesGlossOpen(const Reading& reading);

// The spectrum of a reading, without the gloss of the surface. Throws InputError naming the reading
// where it cannot be used. Pre: it holds one.
Bands bandsIn(const Reading& reading, const FilmSurface& surface);

// Paper with brighteners sends back more than any film below a surface can: what is beyond counts
// as white. Words for it, where a reading has such bands; else empty.
std::string brightenedWords(const Reading& reading, const FilmSurface& surface);

// That inks in these shares were learnt from drawdowns that may still have been brown; else empty.
std::string learntEarlyWords(const InkBook& ink, const ColourModel& model,
                             const std::vector<LotShare>& shares);

// What was laid down: the recipe of the pull with most good sheets of which it can be computed,
// else that of the layer's mix as it is then.
RecipeFound recipeOfLayer(const InkBook& ink, const RecipeOf& recipes, const Layer& layer);

// The shares of every lot in a drawdown's ink when it was made. Throws InputError where they are
// not known.
std::vector<LotShare> sharesOfDrawdown(const InkBook& ink, const Drawdown& drawdown);

// Whether more was weighed into a mix between the drawdown of it that was read and then; on the day
// of the drawdown, after the first that was taken out of the mix.
bool changedSince(const InkBook& ink, const Reading& reading, CivilMinute asOf);

// The shares of every lot in a mix as it was then. Throws InputError where they are not known.
std::vector<LotShare> sharesOfMix(const InkBook& ink, int mix, CivilMinute asOf);

}  // namespace rackbook
