// Places as verbs are given them, and the studio's own on the earth.
#pragma once

#include <string>

#include "records/Book.h"
#include "records/History.h"

namespace rackbook {

// Position of the place of that id in the history. Throws UsageError naming the nearest.
int placePosition(const History& history, const std::string& id);

// Whether a place is the wanted one or lies within it; -1, a place that is not known, does not.
bool liesWithin(const History& history, int place, int wanted);

// Its name, or "not known".
std::string placeWords(const History& history, int place);

// Throws UsageError where it is not recorded where the studio lies.
void requireStudioPlace(const Book& studio);

}  // namespace rackbook
