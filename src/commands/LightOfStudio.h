// The light of the studio, as the book records it.
#pragma once

#include "calc/StudioLight.h"
#include "store/BookFile.h"

namespace rackbook {

// Its places, skies and meterings; nothing learnt yet.
StudioLight lightOfStudio(const BookFile& book, const Book& studio, const HouseRules& rules);

// The same, having learnt from the looks at all prints of the book up to then. `history` is the one
// that will be judged; where it is not of the whole book, the whole is read too.
StudioLight learntLightOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                          const History& history, bool isWhole, CivilMinute asOf);

}  // namespace rackbook
