// What a mix, a layer, or all layers of an edition on one another are predicted to look like.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/PredictionSpread.h"
#include "cli/Console.h"
#include "commands/ColourModel.h"
#include "commands/FilmGiven.h"
#include "commands/PaperGiven.h"

namespace rackbook {

struct PredictedFilm {
    std::string words;  // "layer 2, Breath of rose", "mix eel-stock-rose"
    std::vector<LotShare> shares;
    std::vector<double> shareUncertainties;  // of each; empty where no balance is known
    FilmGiven film;
    std::string unknown;      // why it cannot be predicted; then nothing below is set
    Bands alone{};            // over the bare paper
    bool isFirst = true;      // nothing lies below it but paper
    bool hasOnTop = false;    // all below it are known
    Bands onTop{};            // over all before it
    PredictionSpread spread;  // of it alone
    double onTop_dE00 = 0;    // standard uncertainty of the colour over all before
    // The colour it is held to, where that was read over the same paper.
    std::string reading;
    std::optional<double> recorded_dE00;
    std::optional<Lab> recorded_D50;
};

struct Prediction {
    std::string words;
    PaperGiven paper;
    std::vector<PredictedFilm> films;  // in printing order
    std::vector<std::string> notes;    // whole sentences
};

void printPrediction(Console& console, const InkBook& ink, const Prediction& prediction);

void addPrediction(Tree& report, const InkBook& ink, const Prediction& prediction);

}  // namespace rackbook
