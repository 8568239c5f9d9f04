// How reports name impressions: edition by edition, as TIDE:1-3,5.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "store/HistoryQuery.h"

namespace rackbook {

// `impressions` are positions in `labels`; editions by their codes.
std::string namesOf(const std::vector<std::uint32_t>& impressions,
                    const std::vector<ImpressionLabel>& labels);

}  // namespace rackbook
