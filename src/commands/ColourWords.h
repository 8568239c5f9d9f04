// How predicted colours and their spread are told.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/ColourTarget.h"
#include "calc/PredictionSpread.h"
#include "commands/InkBook.h"

namespace rackbook {

// "L* 71.90, a* 17.90, b* 50.80"
std::string labWords(const Lab& lab);

// "2.1 % straw-ochre-1, 0.40 % kiln-red-1": the lots of one kind.
std::string shareWords(const InkBook& ink, const std::vector<LotShare>& shares, LotKind kind);

double shareOfKind(const InkBook& ink, const std::vector<LotShare>& shares, LotKind kind);

// The standard uncertainty times coverageFactor (calc/WeighingPlan.h), as "1.2".
std::string giveOrTakeWords(double standard_dE00);

// Whole sentences: what the spread is made of, and what is not in it.
std::string spreadSentence(const InkBook& ink, const PredictionSpread& spread);

Tree treeOf(const Lab& lab);
Tree treeOf(const Bands& bands);
Tree treeOf(const ColourMiss& miss);
Tree treeOf(const InkBook& ink, const PredictionSpread& spread);
Tree treeOf(const InkBook& ink, const std::vector<LotShare>& shares);

}  // namespace rackbook
