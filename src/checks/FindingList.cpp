#include "checks/FindingList.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Ranges.h"

namespace rackbook {

std::string Numbers::words() const {
    std::vector<int> sorted = m_numbers;
    std::sort(sorted.begin(), sorted.end());
    sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
    return (sorted.size() == 1 ? "impression " : "impressions ") + formatRanges(sorted);
}

std::string Numbers::words(const char* singularVerb, const char* pluralVerb) const {
    const bool one = std::all_of(m_numbers.begin(), m_numbers.end(),
                                 [&](int number) { return number == m_numbers.front(); });
    return words() + " " + (one ? singularVerb : pluralVerb);
}

std::string elementPointer(const char* list, std::size_t i) {
    return std::string(list) + "/" + std::to_string(i);
}

std::string gramsWords(double mass_g) {
    return formatShortest(std::round(mass_g * 100) / 100) + " g";
}

const char* matrixFateWords(MatrixFate fate) {
    static constexpr const char* words[] = {"kept", "cut away", "cancelled", "effaced",
                                            "destroyed"};
    return words[static_cast<std::size_t>(fate)];
}

}  // namespace rackbook
