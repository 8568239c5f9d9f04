// The light of the studio, as the book records it.
#pragma once

#include "calc/StudioLight.h"
#include "store/BookFile.h"
#include "store/HistoryQuery.h"

namespace rackbook {

// The history to judge readiness by: as historyIn gives it, with what readings at looks say of the
// colour.
History judgedHistoryIn(const BookFile& book, const HistoryFilter& filter, const HouseRules& rules);

// Its places, skies and meterings; nothing learnt yet.
StudioLight lightOfStudio(const BookFile& book, const Book& studio, const HouseRules& rules,
                          CivilMinute asOf);

// The same, having learnt from the looks at all prints of the book up to then. `history` is the one
// that will be judged; where it is not of the whole book, the whole is read too.
StudioLight learntLightOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                          const History& history, bool isWhole, CivilMinute asOf);

}  // namespace rackbook
