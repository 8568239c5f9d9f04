// How impressions left the studio's hands and came back, from transfers and moves. Private to
// sheets/.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "records/RecordSet.h"
#include "sheets/CertificateFacts.h"

namespace rackbook {

class ProvenanceOf {
public:
    // The records must outlive it. What happened after asOf is left out.
    ProvenanceOf(const RecordSet& records, CivilMinute asOf, bool namesHolders);

    // By time. A move that carries out what a transfer agreed on is not told again; nor are moves
    // from one place of the studio to another.
    std::vector<ProvenanceStep> stepsOf(const std::string& impression) const;

    // When it was last recorded at a place; nothing where it never was.
    std::optional<EdtfDate> lastPlacedOn(const std::string& impression) const;

    // Whether anything, later things included, records that it changed hands.
    bool isTold(const std::string& impression) const;

private:
    struct Rows {
        std::vector<const Transfer*> transfers;
        std::vector<const Move*> moves;
    };

    bool isOutOfHands(const Ref<Place>& place) const;
    std::vector<ProvenanceStep> movesOf(const Rows& rows, CivilMinute upTo) const;

    const RecordSet& m_records;
    CivilMinute m_asOf;
    bool m_namesHolders;
    std::unordered_map<std::string, Rows> m_rows;  // by impression
};

}  // namespace rackbook
