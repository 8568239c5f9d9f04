#include "records/DesignationFit.h"

#include "records/Designation.h"

namespace rackbook {

namespace {

bool isRoman(const std::string& designation) {
    return designation.find_first_of("0123456789") == std::string::npos;
}

}  // namespace

std::optional<int> declaredCount(const Edition& edition, DesignationKind kind) {
    if (kind == DesignationKind::numbered)
        return edition.declaredNumbered;
    for (const DeclaredProofs& proofs : edition.declaredProofs)
        if (proofs.designationKind == kind)
            return proofs.count;
    return std::nullopt;
}

std::optional<DesignationFault> designationFault(const Edition& edition,
                                                 const Impression& impression) {
    if (!impression.designation || !impression.designationKind)
        return std::nullopt;
    const DesignationParts parts = designationParts(*impression.designation);
    if (!parts.number)
        return std::nullopt;
    if (*parts.number < 1)
        return DesignationFault::belowOne;
    if (parts.of && *parts.number > *parts.of)
        return DesignationFault::beyondItsOwn;
    const std::optional<int> declared = declaredCount(edition, *impression.designationKind);
    const bool isSuite = *impression.designationKind == DesignationKind::numbered &&
                         isRoman(*impression.designation);
    if (!declared || isSuite)
        return std::nullopt;
    if (parts.of && *parts.of != *declared)
        return DesignationFault::countedOutOfAnother;
    if (*parts.number > *declared)
        return DesignationFault::beyondDeclared;
    return std::nullopt;
}

}  // namespace rackbook
