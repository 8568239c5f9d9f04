// How an impression and a block came to be. Private to exchange/.
#pragma once

#include "exchange/LinkedWork.h"

namespace rackbook {

// A Production with a part for the maker, for the printer where no run names one, and for each run
// that the sheet went through.
Tree productionOf(const Impression& impression, const Edition& edition, LinkedWork& work);

// A Production with a part for each state that was cut; nothing where there is none.
std::optional<Tree> productionOf(const Block& block, const LinkedWork& work);

// When it went, and no more than that.
Tree destructionOf(const std::optional<EdtfDate>& date, const LinkedWork& work);

}  // namespace rackbook
