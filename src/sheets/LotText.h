// What stands on a container and what is in it, as sheets write it.
#pragma once

#include <string>
#include <vector>

#include "records/Lot.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// Pigments of an ink, metals of a drier with their content; "not recorded" where an ink or a drier
// has none. Neither is asked of a base or a modifier.
std::string pigmentsText(const Lot& lot, const SheetWords& words);

// A metal as the language calls it; one that is not among metalsWithWords as it was recorded.
std::string metalText(const std::string& metal, const SheetWords& words);

// Of driers, in English, which have a label "metal.name".
const std::vector<std::string>& metalsWithWords();
// The same, with the shares of metals called shares of the drier: where shares of ink stand beside.
std::string contentText(const Lot& lot, const SheetWords& words);

// To be handled with care: metal compounds, solvents.
inline bool needsCaution(const Lot& lot) {
    return lot.lotKind == LotKind::drier || lot.lotKind == LotKind::modifier;
}

}  // namespace rackbook
