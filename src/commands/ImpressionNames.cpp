#include "commands/ImpressionNames.h"

#include <algorithm>
#include <map>

#include "base/Ranges.h"
#include "base/Text.h"

namespace rackbook {

std::string namesOf(const std::vector<std::uint32_t>& impressions,
                    const std::vector<ImpressionLabel>& labels) {
    std::map<std::string, std::vector<int>> numbers;
    for (const std::uint32_t impression : impressions)
        numbers[labels[impression].edition].push_back(labels[impression].workingNumber);
    std::vector<std::string> names;
    for (auto& [edition, its] : numbers) {
        std::sort(its.begin(), its.end());
        names.push_back(edition + ":" + formatRanges(its));
    }
    return joined(names);
}

}  // namespace rackbook
