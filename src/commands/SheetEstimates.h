// What sheets print of light that no record says: verdicts, days in light and doses, as of a day.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <unordered_map>

#include "base/CivilTime.h"
#include "base/Tree.h"
#include "records/RecordSet.h"

namespace rackbook {

// Figures are kept as coarse as they are printed: whole days, rounded down, and doses in sunny days
// to two digits that count. So a change behind them tells where it changes the sheet, and what is
// private behind them, such as where the studio is, cannot be reckoned back from them.
class SheetEstimates {
public:
    // The records must outlive it. Nothing is reckoned before the first question.
    SheetEstimates(const RecordSet& records, CivilMinute asOf) : m_records(records), m_asOf(asOf) {}

    // Nothing for an impression that is not judged, being spoiled or destroyed.
    std::optional<Tree> of(const std::string& impression, bool verdictsOnly);

private:
    struct Figures;

    void reckon();

    const RecordSet& m_records;
    CivilMinute m_asOf;
    std::shared_ptr<const std::unordered_map<std::string, Figures>> m_figures;  // by impression
};

}  // namespace rackbook
