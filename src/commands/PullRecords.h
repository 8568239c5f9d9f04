// The records that a printing run becomes, however it was told.
#pragma once

#include <optional>
#include <vector>

#include "commands/Recording.h"
#include "records/Edition.h"
#include "records/Impression.h"
#include "records/Place.h"
#include "records/Pull.h"
#include "store/BookFile.h"

namespace rackbook {

struct PullTold {
    Pull pull;  // but for its impressions
    Edition edition;
    std::vector<Impression> printed;
    std::vector<Impression> spoiled;   // of those printed
    std::optional<Ref<Place>> hungAt;  // the good ones, when the run ends, or begins
};

// The pull, the spoiled sheets as such from that day on, and where they were hung, the move of the
// good ones. Throws UsageError where sheets cannot be printed any more, and where none is left to
// hang.
std::vector<MadeRecord> recordsOfPull(const BookFile& book, const PullTold& told);

std::vector<Impression> without(const std::vector<Impression>& sheets,
                                const std::vector<Impression>& leftOut);

}  // namespace rackbook
