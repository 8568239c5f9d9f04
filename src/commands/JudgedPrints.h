// Impressions as they are judged on a day, with all that the verdicts follow from.
#pragma once

#include <optional>
#include <vector>

#include "calc/Readiness.h"
#include "commands/LightOfStudio.h"

namespace rackbook {

// The verdicts point into the light and the history. Throws StoreError.
struct JudgedPrints {
    // Those that the filter lets through; without one the whole book. `rules` must outlive it.
    JudgedPrints(const BookFile& book, const Book& studio, const HouseRules& rules,
                 const std::optional<HistoryFilter>& filter, CivilMinute asOf);
    JudgedPrints(const JudgedPrints&) = delete;
    JudgedPrints& operator=(const JudgedPrints&) = delete;

private:
    LitHistory m_lit;

public:
    const History& history;
    const StudioLight& light;
    const std::vector<ImpressionLabel> labels;
    const Readiness readiness;
};

}  // namespace rackbook
