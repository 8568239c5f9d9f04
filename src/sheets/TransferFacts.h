// Everything that the sheet of a transfer is made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Readiness.h"
#include "records/RecordSet.h"

namespace rackbook {

struct TransferParty {
    std::string name;     // empty where none is recorded
    std::string contact;  // empty unless asked for and recorded
};

struct TransferPrint {
    int workingNumber = 0;
    std::string designation;  // empty where none was given yet
    ImpressionFate fate = ImpressionFate::kept;
    std::optional<Verdict> verdict;  // nothing where it is spoiled or destroyed
};

struct TransferEdition {
    Edition edition;
    std::string maker;  // empty where none is recorded
    std::vector<TransferPrint> prints;
};

struct TransferFacts {
    CivilMinute asOf = 0;
    std::string studio;
    LengthUnit lengthUnit = LengthUnit::mm;
    Transfer transfer;
    TransferParty giver;
    TransferParty receiver;
    std::vector<TransferEdition> editions;  // both in the order in which the transfer names them
};

// What happened after asOf is left out; impressions that are not in the records too.
TransferFacts transferFactsOf(const RecordSet& records, const Transfer& transfer, CivilMinute asOf,
                              bool namesContacts);

}  // namespace rackbook
