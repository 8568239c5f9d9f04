// Layers that the words of a command line name.
#pragma once

#include <string>
#include <vector>

#include "records/Edition.h"
#include "records/Layer.h"
#include "store/BookFile.h"

namespace rackbook {

// All of an edition, in printing order.
std::vector<Layer> layersOf(const BookFile& book, const Edition& edition);

// The layer of that ordinal ("3" or "L3") or id. Throws UsageError saying which are planned.
Layer layerOf(const BookFile& book, const Edition& edition, const std::string& words);

}  // namespace rackbook
