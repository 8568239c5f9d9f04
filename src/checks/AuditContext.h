// What audit rules look at: the records, the house rules, the day, and what is computed from them
// once, when a rule first asks for it. Not safe for use by several threads at once.
#pragma once

#include <cstddef>
#include <memory>
#include <vector>

#include "base/CivilTime.h"
#include "calc/MixLedger.h"
#include "records/History.h"
#include "records/HouseRules.h"
#include "records/RecordSet.h"

namespace rackbook {

// What happened to one impression, each list by earliest time, then by position in the record set.
struct ImpressionTimeline {
    std::vector<const Pull*> pulls;
    std::vector<const Move*> moves;
    std::vector<const Look*> looks;  // at the impression itself
    std::vector<const Transfer*> transfers;
};

// What belongs to one edition.
struct EditionFolder {
    std::vector<const Layer*> layers;             // by ordinal
    std::vector<const Block*> blocks;             // in the order of the record set
    std::vector<std::size_t> impressions;         // positions, by working number
    std::vector<std::vector<const Pull*>> pulls;  // of each of the layers, by earliest time
};

class AuditContext {
public:
    // The records must outlive the context and stay as they are.
    AuditContext(const RecordSet& records, HouseRules rules, CivilMinute asOf);
    ~AuditContext();
    AuditContext(const AuditContext&) = delete;
    AuditContext& operator=(const AuditContext&) = delete;

    const RecordSet& records() const { return m_records; }
    const HouseRules& rules() const { return m_rules; }
    CivilMinute asOf() const { return m_asOf; }

    // Positions in it are those of the record set, except for impressions: see HistoryOf.h.
    const History& history() const;
    // Constituents are positions of lots in the record set.
    const MixLedger& ledgerByLot() const;
    // Constituents are the enumerators of LotKind.
    const MixLedger& ledgerByKind() const;

    // By position of the impression or edition in the record set.
    const ImpressionTimeline& timelineOf(std::size_t impression) const;
    const EditionFolder& folderOf(std::size_t edition) const;

    // By position of the place: a gallery or a holder's place, or within one.
    bool isOutOfHands(std::size_t place) const;
    // True where one of the two is the other or lies somewhere within it.
    bool sharePlace(const Ref<Place>& a, const Ref<Place>& b) const;

private:
    struct Computed;

    const RecordSet& m_records;
    HouseRules m_rules;
    CivilMinute m_asOf;
    std::unique_ptr<Computed> m_computed;
};

}  // namespace rackbook
