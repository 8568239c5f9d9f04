// How warm it is where heaps lie, and a word about a portion that was too old when printing began.
#pragma once

#include <string>
#include <vector>

#include "calc/HeapLife.h"
#include "cli/Console.h"
#include "records/HouseRules.h"
#include "records/Pull.h"
#include "store/BookFile.h"

namespace rackbook {

// The rules of how long a heap lives, and when it is taken to be gone.
const std::vector<std::string>& rulesOfHeaps();

HeapLives heapLivesBy(const HouseRules& rules);

// Where a temperature outside of this is given, the life of heaps is not computed from it.
bool isRoomTemperature(double temperature_C);

// "2.3 h", "14 days"
std::string lifeWords(double hours);

// A warning where the portion was past, or near its end, when the pull began; else nothing, also
// where the day of the pull is not known. Pre: the pull is not in the book yet. Throws StoreError.
std::string oldHeapWords(const BookFile& book, const Pull& pull);

}  // namespace rackbook
