#include "sheets/EditionTally.h"

#include <algorithm>
#include <map>

#include "records/Designation.h"

namespace rackbook {

namespace {

void addDesignated(EditionTally& tally, std::map<DesignationKind, TallyRow>& rows,
                   const Impression& impression) {
    if (!impression.designation)
        return;
    ++tally.designated;
    if (!impression.designationKind) {
        ++tally.designatedWithoutKind;
        return;
    }
    TallyRow& row = rows[*impression.designationKind];
    ++row.designated;
    row.designations.push_back(*impression.designation);
}

void addFate(EditionTally& tally, const Impression& impression) {
    switch (impression.fate) {
        case ImpressionFate::kept:
            ++tally.kept;
            ++(impression.designation ? tally.keptSigned : tally.keptUnsigned);
            break;
        case ImpressionFate::spoiled:
            ++tally.spoiled;
            break;
        case ImpressionFate::destroyed:
            ++tally.destroyed;
            break;
    }
}

// Where what is declared comes to all that there are, nothing is left for other kinds.
void declareNoOthers(const Edition& edition, const EditionTally& tally,
                     std::map<DesignationKind, TallyRow>& rows) {
    if (!edition.declaredTotal || tally.declaredSum != edition.declaredTotal)
        return;
    for (auto& [kind, row] : rows)
        row.declared = row.declared.value_or(0);
}

std::optional<Numbering> withGaps(const EditionTally& tally) {
    const std::optional<Numbering> numbering = numberingOf(tally.rows.front());
    if (!numbering)
        return std::nullopt;
    const int below = numbering->numbers.back() - static_cast<int>(numbering->numbers.size());
    return below > tally.keptUnsigned ? numbering : std::nullopt;
}

}  // namespace

std::vector<int> Numbering::missing() const {
    std::vector<int> all;
    for (int number = 1; number <= of; ++number)
        if (!std::binary_search(numbers.begin(), numbers.end(), number))
            all.push_back(number);
    return all;
}

std::optional<Numbering> numberingOf(const TallyRow& row) {
    Numbering numbering;
    for (const std::string& written : row.designations) {
        const DesignationParts parts = designationParts(written);
        const bool isPlain =
            parts.number && parts.of && *parts.number > 0 &&
            written == std::to_string(*parts.number) + "/" + std::to_string(*parts.of);
        if (!isPlain || (!numbering.numbers.empty() && numbering.of != *parts.of))
            return std::nullopt;
        numbering.of = *parts.of;
        numbering.numbers.push_back(*parts.number);
    }
    std::vector<int>& numbers = numbering.numbers;
    std::sort(numbers.begin(), numbers.end());
    const bool isTwice = std::adjacent_find(numbers.begin(), numbers.end()) != numbers.end();
    return numbers.empty() || isTwice ? std::nullopt : std::optional(std::move(numbering));
}

EditionTally tallyOf(const Edition& edition, const std::vector<Impression>& impressions,
                     const std::set<std::string>& firstLayer) {
    EditionTally tally;
    std::map<DesignationKind, TallyRow> rows;
    rows[DesignationKind::numbered].declared = edition.declaredNumbered;
    tally.declaredSum = edition.declaredNumbered;
    for (const DeclaredProofs& proofs : edition.declaredProofs) {
        TallyRow& row = rows[proofs.designationKind];
        row.declared = row.declared.value_or(0) + proofs.count;
        if (tally.declaredSum)
            tally.declaredSum = *tally.declaredSum + proofs.count;
    }
    int printed = 0;
    for (const Impression& impression : impressions) {
        addDesignated(tally, rows, impression);
        addFate(tally, impression);
        ++(firstLayer.count(impression.id) > 0 ? printed : tally.notInFirst);
    }
    if (!firstLayer.empty())
        tally.printedFirst = printed;
    declareNoOthers(edition, tally, rows);
    for (auto& [kind, row] : rows) {
        row.designationKind = kind;
        tally.rows.push_back(std::move(row));
    }
    tally.withGaps = withGaps(tally);
    return tally;
}

}  // namespace rackbook
