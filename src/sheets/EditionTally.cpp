#include "sheets/EditionTally.h"

#include <algorithm>
#include <map>

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

}  // namespace

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
    for (auto& [kind, row] : rows) {
        row.designationKind = kind;
        tally.rows.push_back(std::move(row));
    }
    return tally;
}

}  // namespace rackbook
