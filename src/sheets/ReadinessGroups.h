// Impressions that stand alike share a line. Private to sheets/.
#pragma once

#include <string>
#include <vector>

#include "sheets/ReadinessFacts.h"
#include "sheets/SheetWords.h"

namespace rackbook {

struct ReadinessGroup {
    std::size_t sample = 0;                 // a row that stands for the others
    std::vector<int> numbers;               // working numbers
    std::vector<std::string> designations;  // of those that have one
    std::string edition;                    // code
    std::string layer;
    std::string days;
    std::string look;
    std::string place;
    std::vector<std::string> reasons;
};

// By what to do first: bring out, more light, look due, not known, ready, not affected; then by
// edition.
std::vector<ReadinessGroup> readinessGroups(const ReadinessFacts& facts, const SheetWords& words);

// "8", "8–11" days in light, rounded down, as the sentences of calc/Wording do it.
std::string wholeDays(double daysLow, double daysHigh);

// The verdicts in that order.
const std::vector<Verdict>& verdictsByUrgency();

// "EEL 3, 11, 17"
std::string groupName(const ReadinessGroup& group);

}  // namespace rackbook
