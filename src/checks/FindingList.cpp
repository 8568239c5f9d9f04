#include "checks/FindingList.h"

#include <cmath>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"

namespace rackbook {

void Numbers::add(const RecordSet& records, const Impression& impression) {
    const Edition* edition = records.find(impression.edition);
    m_numbers[edition ? edition->code : impression.edition.id].insert(impression.workingNumber);
}

bool Numbers::isOne() const {
    return m_numbers.size() == 1 && m_numbers.begin()->second.size() == 1;
}

std::string Numbers::words() const {
    std::vector<std::string> parts;
    for (const auto& [code, numbers] : m_numbers)
        parts.push_back((code.empty() ? "" : code + ":") +
                        formatRanges({numbers.begin(), numbers.end()}));
    return (isOne() ? "impression " : "impressions ") + joined(parts);
}

std::string Numbers::words(const char* singularVerb, const char* pluralVerb) const {
    return words() + " " + (isOne() ? singularVerb : pluralVerb);
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
