// The way of a lot: into mixes, onto impressions, and to whoever has those now.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/UseOfPulls.h"
#include "commands/InkBook.h"

namespace rackbook {

struct MixOnWay {
    std::size_t mix = 0;  // position
    Holding holding = Holding::holds;
    Estimate share;                 // as it is now; of a mix that was emptied, the greatest it had
    std::vector<std::string> from;  // "the lot", ids of mixes
    Estimate left_g;                // of the mix
};

struct ImpressionOnWay {
    TracedImpression traced;
    std::string where;    // holder and place by name; "not known"
    bool isAway = false;  // out of the studio's hands
};

struct LotWay {
    std::vector<MixOnWay> mixes;
    std::vector<TracedPull> pulls;
    std::vector<ImpressionOnWay> impressions;
    // Before this minute the lot was not there; pulls that began earlier are left out where only
    // unrecorded ink speaks for them.
    std::optional<CivilMinute> notBefore;
    std::size_t pullsLeftOut = 0;
};

// `lot` is a position. Holders and places are as of that minute.
LotWay wayOfLot(const InkBook& ink, int lot, CivilMinute asOf);

}  // namespace rackbook
