// Everything that an edition ledger is made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheets/CertificateFacts.h"
#include "sheets/ReadinessFacts.h"

namespace rackbook {

struct LedgerRow {
    Impression impression;           // as it stood then, without holder and note
    std::optional<Verdict> verdict;  // nothing where it is spoiled or destroyed
    std::string where;               // empty where it is not known, or it is destroyed
    // The last hand-over, unless it came back: sold, given, on consignment or on loan.
    std::optional<ProvenanceStep> handedOver;
};

struct LedgerEdition {
    std::string title;
    std::string code;
    Edition edition;
    std::vector<LedgerRow> rows;  // by working number
};

struct LedgerFacts {
    std::string studio;
    CivilMinute asOf = 0;
    std::vector<LedgerEdition> editions;  // in the order of recording
};

// Places out of the studio's hands have the question's words for them, unless it names holders.
LedgerFacts ledgerFactsOf(const RecordSet& records, const ReadinessQuestion& question);

}  // namespace rackbook
