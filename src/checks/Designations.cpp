#include <map>
#include <optional>
#include <string>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"
#include "records/Designation.h"
#include "records/DesignationFit.h"

namespace rackbook::rules {

namespace {

// Why the designation cannot be, or nothing.
std::string whyBeyond(const Edition& edition, const Impression& impression) {
    const std::optional<DesignationFault> fault = designationFault(edition, impression);
    if (!fault)
        return {};
    const DesignationParts parts = designationParts(*impression.designation);
    const DesignationKind kind = *impression.designationKind;
    const int declared = declaredCount(edition, kind).value_or(0);
    const std::string of = std::to_string(declared) +
                           (kind == DesignationKind::numbered ? "" : " of its kind") +
                           (declared == 1 ? " is declared" : " are declared");
    switch (*fault) {
        case DesignationFault::belowOne:
            return "numbering begins at 1";
        case DesignationFault::beyondItsOwn:
            return "number " + std::to_string(*parts.number) + " lies beyond the " +
                   std::to_string(*parts.of) + " it is counted out of";
        case DesignationFault::countedOutOfAnother:
            return "it is counted out of " + std::to_string(*parts.of) + ", but " + of;
        case DesignationFault::beyondDeclared:
            break;
    }
    return "it is number " + std::to_string(*parts.number) + ", but " + of;
}

}  // namespace

Findings designationTwice(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition&, const EditionFolder& folder) {
        std::map<std::string, int> firstWith;
        eachImpression(context, folder, [&](const Impression& impression, const auto&) {
            if (!impression.designation || impression.designationKind == DesignationKind::bonATirer)
                return;
            const auto [first, isNew] = firstWith.emplace(designationKey(*impression.designation),
                                                          impression.workingNumber);
            if (isNew)
                return;
            const bool numbered = designationParts(*impression.designation).number.has_value();
            found.add(numbered ? Severity::error : Severity::warning, impression, "/designation",
                      "impression " + std::to_string(first->second) +
                          " of the edition already carries this designation",
                      *impression.designation,
                      numbered ? "Correct one of the two."
                               : "Number the proofs, or correct one of the two.");
        });
    });
    return found.take();
}

Findings bonATirerTwice(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition&, const EditionFolder& folder) {
        const Impression* first = nullptr;
        eachImpression(context, folder, [&](const Impression& impression, const auto&) {
            if (impression.designationKind != DesignationKind::bonATirer)
                return;
            if (first)
                found.add(Severity::error, impression, "/designation",
                          "impression " + std::to_string(first->workingNumber) +
                              " is the bon à tirer of the edition already",
                          impression.designation.value_or(""),
                          "Give one of the two another designation.");
            else
                first = &impression;
        });
    });
    return found.take();
}

Findings designationBeyondDeclared(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        eachImpression(context, folder, [&](const Impression& impression, const auto&) {
            if (!impression.designation || !impression.designationKind)
                return;
            std::string why = whyBeyond(edition, impression);
            if (!why.empty())
                found.add(Severity::error, impression, "/designation", std::move(why),
                          *impression.designation,
                          "Correct the designation, or what the edition declares.");
        });
    });
    return found.take();
}

Findings signingIncomplete(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        Numbers undated;
        eachImpression(context, folder, [&](const Impression& impression, const auto&) {
            if (!impression.designation) {
                if (impression.signedOn)
                    found.add(Severity::error, impression, "/designation",
                              "it was signed, but carries no designation", "",
                              "Record the designation as written.");
                return;
            }
            if (!impression.designationKind) {
                found.add(Severity::error, impression, "/designationKind",
                          "the kind of its designation is not recorded", *impression.designation,
                          "Record what the designation means.");
                return;
            }
            const auto meant = designationKindOf(*impression.designation);
            if (meant && *meant != *impression.designationKind)
                found.add(Severity::warning, impression, "/designationKind",
                          std::string("the designation reads as ") + designationWords(*meant) +
                              ", but its kind is " + designationWords(*impression.designationKind),
                          *impression.designation, "Correct one of the two.");
            if (edition.status == EditionStatus::closed && !impression.signedOn)
                undated.add(impression.workingNumber);
        });
        if (!undated.empty())
            found.add(Severity::note, edition, "",
                      "no date of signing is recorded for " + undated.words(), "",
                      "Record signedOn, as well as it is known.");
    });
    return found.take();
}

}  // namespace rackbook::rules
