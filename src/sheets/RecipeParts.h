// The sections of a recipe card. Private to sheets/.
#pragma once

#include <string>

#include "sheets/Flow.h"
#include "sheets/RecipeFacts.h"
#include "sheets/SheetWords.h"

namespace rackbook::recipeparts {

// Each adds what stands below its heading. The heading is set already.
void addIdentity(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
void addBefore(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
void addSteps(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
void addOutcome(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
void addComposition(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
// Swatch, curve and a frame for a drawdown side by side, or the frame below the others. The frame
// has at least 50 × 50 mm: side by side, where the sheet is as wide as leastWidthInARow_mm.
void addColour(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
void addColourInRows(Flow& flow, const RecipeFacts& facts, const SheetWords& words);

constexpr double leastWidthInARow_mm = 155;

// Driers or modifiers are to be handled, or there is something to know of the lots.
bool hasBefore(const RecipeFacts& facts);

// What the plan makes is not told by the shares of the recipe already: lots are replaced, shares
// are badly known, or nothing can be weighed.
bool hasComposition(const RecipeFacts& facts);

// The balance can show every part of the plan.
bool canBeWeighed(const RecipeFacts& facts);

// "Field rose (field-rose-1)". Pre: the position is a lot's.
std::string lotText(const RecipeFacts& facts, int position);

}  // namespace rackbook::recipeparts
