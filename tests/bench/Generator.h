// Invented books of any size for measuring: the same seed and size give the same records.
#pragma once

#include <cstdint>
#include <vector>

#include "records/Record.h"

namespace rackbook {

// A studio with about that many impressions in editions of 20 to 60 sheets, five to eight layers
// each: stock mixes, let-downs and driered portions by weight, one or two pulls a layer with
// spoils, hanging after each, looks, signing, half of it put into drawers.
// Pre: impressions is 1 or more.
std::vector<Record> generatedRecords(int impressions, std::uint32_t seed);

}  // namespace rackbook
