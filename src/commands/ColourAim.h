// The colour that something is held to: a reading, a layer's recorded colour, or what a mix gives.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/ColourTarget.h"
#include "cli/CommandSpec.h"
#include "commands/ColourModel.h"
#include "commands/FilmGiven.h"
#include "commands/PaperGiven.h"
#include "store/BookFile.h"

namespace rackbook {

struct ColourBook {
    const BookFile& book;
    const InkBook& ink;
    const ColourModel& model;
};

struct ColourAim {
    std::string words;    // "layer 1 of FER (Ochre, thin)"
    std::string reading;  // id; empty where it is predicted
    int layer = -1;       // position, where a layer was named
    // The one or the other: as it was read, or what it is made of, from which it is to be
    // predicted.
    std::optional<ColourTarget> target;
    std::vector<LotShare> shares;
    // Why there is neither: "no colour is recorded for it, and …". Empty where there is.
    std::string noColour;
    PaperWanted paper;                     // what the reading was taken over
    std::optional<double> filmWeight_gm2;  // of the drawdown that was read, or the layer's own
    bool ofPrint = false;                  // read on an impression
    std::vector<std::string> warnings;     // whole sentences
};

// WHAT and LAYER
std::vector<PositionalSpec> aimPositionals();

// `words` names a reading, a drawdown, a layer or a mix by id, or an edition by code with `layer`,
// its place in the printing order. The colour of a layer is the reading it is held to, else the
// latest of a drawdown of its mix, else what is predicted from what was laid down; that of a mix is
// predicted from what it is made of then. Throws UsageError with the nearest name, and InputError
// where a reading has no colour under D50 and 2°.
ColourAim colourAimNamed(const ColourBook& colours, const std::string& words,
                         const std::optional<std::string>& layer, CivilMinute asOf);

// From the spectrum where there is one, else as typed for D50 and 2°. Throws InputError with
// `remedy` where it holds neither.
ColourTarget colourRead(const Reading& reading, const FilmSurface& surface,
                        const std::string& remedy);

// The latest of all drawdowns of a mix, one with a spectrum before others; nothing where none was
// measured.
const Reading* readingOfMix(const InkBook& ink, const std::string& mix);

// As it was read, or as predicted over that paper at its own film weight, else at that given.
// Throws InputError where it has no colour.
ColourTarget targetOver(const ColourModel& model, const ColourAim& aim, const PaperGiven& paper,
                        double filmWeight_gm2);

// Lots in it that were never characterised.
std::vector<std::string> unknownInks(const InkBook& ink, const ColourModel& model,
                                     const std::vector<LotShare>& shares);

// Throws InputError naming the lots that were never characterised. `where` begins the message.
void requireKnownInks(const InkBook& ink, const ColourModel& model,
                      const std::vector<LotShare>& shares, const std::string& where);

}  // namespace rackbook
