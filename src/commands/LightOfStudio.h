// The light of the studio, as the book records it.
#pragma once

#include "calc/StudioLight.h"
#include "store/BookFile.h"
#include "store/HistoryPart.h"
#include "store/HistoryQuery.h"

namespace rackbook {

// The history to judge readiness by: as historyIn gives it, with what readings at looks say of the
// colour.
History judgedHistoryIn(const BookFile& book, const HistoryFilter& filter, const HouseRules& rules);

// The same of those impressions (ids) alone, as historyOfPrints gives it: at the cost of what
// belongs to them.
History judgedHistoryOfPrints(const BookFile& book, const std::vector<std::string>& impressions,
                              const HouseRules& rules);

// Its places, skies and meterings; nothing learnt yet.
StudioLight lightOfStudio(const BookFile& book, const Book& studio, const HouseRules& rules,
                          CivilMinute asOf);

// The same, having learnt from the looks at all prints of the book up to then. Pre: `whole` is of
// the whole book.
StudioLight learntLightOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                          const History& whole, CivilMinute asOf);

// What is to be judged, and by which light.
struct LitHistory {
    History history;
    StudioLight light;
};

// Of the impressions that the filter names by id; without one of the whole book. Where the light is
// known, the prints of the latest pulls are read too: looks at them say how much light is wanted.
LitHistory litHistoryOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                        const std::optional<HistoryFilter>& filter, CivilMinute asOf);

}  // namespace rackbook
