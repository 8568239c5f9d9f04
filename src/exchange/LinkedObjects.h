// Things that can be touched: impressions and blocks, as HumanMadeObjects. Private to exchange/.
#pragma once

#include "exchange/LinkedWork.h"

namespace rackbook {

// "Ebb at the Eel Weir, 7/20", or by its working number where it has no designation.
std::string titleOf(const Impression& impression, const Edition& edition);

Tree objectOf(const Impression& impression, const Edition& edition, LinkedWork& work);
Tree objectOf(const Block& block, const LinkedWork& work);

}  // namespace rackbook
