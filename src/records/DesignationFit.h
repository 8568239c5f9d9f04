// Whether a designation can stand beside what its edition declares.
#pragma once

#include <optional>

#include "records/Impression.h"

namespace rackbook {

enum class DesignationFault {
    belowOne,             // numbering begins at 1
    beyondItsOwn,         // AP IV/III
    countedOutOfAnother,  // 7/40 where 30 are declared
    beyondDeclared        // AP 4 where 3 are declared
};

// What the edition declares of the kind; nothing where it says nothing.
std::optional<int> declaredCount(const Edition& edition, DesignationKind kind);

// Nothing where the designation fits, or too little is recorded to tell. A suite in roman numerals
// is a numbering of its own beside the numbered impressions.
std::optional<DesignationFault> designationFault(const Edition& edition,
                                                 const Impression& impression);

}  // namespace rackbook
