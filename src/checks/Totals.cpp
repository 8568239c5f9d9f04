#include <array>
#include <optional>
#include <string>

#include "calc/Wording.h"
#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"
#include "records/Designation.h"

namespace rackbook::rules {

namespace {

constexpr std::size_t kindCount = std::size(EnumText<DesignationKind>::names);

// Kept impressions by kind of designation; numbered ones in roman numerals are a suite of their own
// and not counted.
struct DesignatedCounts {
    std::array<int, kindCount> of = {};
    int all = 0;
};

DesignatedCounts countDesignated(const AuditContext& context, const EditionFolder& folder) {
    DesignatedCounts counts;
    eachImpression(context, folder, [&](const Impression& impression, const auto&) {
        if (!impression.designation || !impression.designationKind)
            return;
        const bool roman = impression.designation->find_first_of("0123456789") == std::string::npos;
        if (*impression.designationKind == DesignationKind::numbered && roman)
            return;
        ++counts.all;
        if (impression.fate == ImpressionFate::kept)
            ++counts.of[static_cast<std::size_t>(*impression.designationKind)];
    });
    return counts;
}

// Kinds that a statement gives the number of; proofs made on the way are often left out of it.
constexpr std::array<DesignationKind, 4> statedKinds = {
    DesignationKind::artistsProof, DesignationKind::printersProof, DesignationKind::horsCommerce,
    DesignationKind::presentationProof};

bool isDeclared(const Edition& edition, DesignationKind kind) {
    for (const DeclaredProofs& proofs : edition.declaredProofs)
        if (proofs.designationKind == kind)
            return true;
    return false;
}

std::string designatedAs(int count, DesignationKind kind) {
    return std::to_string(count) + (count == 1 ? " impression is" : " impressions are") +
           " designated as " + designationWords(kind);
}

void checkSum(const Edition& edition, FindingList& found) {
    if (!edition.declaredNumbered || !edition.declaredTotal)
        return;
    int proofs = 0;
    for (const DeclaredProofs& declared : edition.declaredProofs)
        proofs += declared.count;
    const int sum = *edition.declaredNumbered + proofs;
    if (sum != *edition.declaredTotal)
        found.add(Severity::error, edition, "/declaredTotal",
                  std::to_string(*edition.declaredNumbered) + " numbered impressions and " +
                      std::to_string(proofs) + " proofs are declared, which makes " +
                      std::to_string(sum),
                  std::to_string(*edition.declaredTotal), "Correct the total or its parts.");
}

void checkNumbered(const Edition& edition, const DesignatedCounts& counts, FindingList& found) {
    if (!edition.declaredNumbered)
        return;
    const int count = counts.of[static_cast<std::size_t>(DesignationKind::numbered)];
    const std::string declared = std::to_string(*edition.declaredNumbered);
    if (count > *edition.declaredNumbered)
        found.add(Severity::error, edition, "/declaredNumbered",
                  std::to_string(count) + " numbered impressions are recorded, but " + declared +
                      (*edition.declaredNumbered == 1 ? " is" : " are") + " declared",
                  declared, "Correct the designations or the declaration.");
    else if (edition.status == EditionStatus::closed && count < *edition.declaredNumbered &&
             counts.all > 0)
        found.add(Severity::warning, edition, "/declaredNumbered",
                  "the edition is closed, but only " + std::to_string(count) + " of its " +
                      declared + " numbered impressions are recorded as kept",
                  declared, "Record the missing ones, or what became of them.");
}

}  // namespace

Findings proofsBeyondDeclared(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        const DesignatedCounts counts = countDesignated(context, folder);
        for (std::size_t i = 0; i < edition.declaredProofs.size(); ++i) {
            const DeclaredProofs& declared = edition.declaredProofs[i];
            const int count = counts.of[static_cast<std::size_t>(declared.designationKind)];
            if (count > declared.count)
                found.add(Severity::error, edition, elementPointer("/declaredProofs", i) + "/count",
                          designatedAs(count, declared.designationKind) + ", but " +
                              std::to_string(declared.count) +
                              (declared.count == 1 ? " is" : " are") + " declared",
                          std::to_string(declared.count),
                          "Correct the designations or the declaration.");
        }
        if (edition.declaredProofs.empty() && !edition.declaredTotal)
            return;
        for (const DesignationKind kind : statedKinds) {
            const int count = counts.of[static_cast<std::size_t>(kind)];
            if (count > 0 && !isDeclared(edition, kind))
                found.add(Severity::warning, edition, "/declaredProofs",
                          designatedAs(count, kind) + ", but none is declared", "",
                          "Declare them, or correct the designations.");
        }
    });
    return found.take();
}

Findings totalsDiffer(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        checkSum(edition, found);
        checkNumbered(edition, countDesignated(context, folder), found);
    });
    return found.take();
}

Findings proofsShare(const AuditContext& context) {
    FindingList found;
    const double most = context.rules().value("proofsMostShare");
    eachEdition(context, [&](const Edition& edition, const EditionFolder&) {
        if (!edition.declaredNumbered || *edition.declaredNumbered == 0)
            return;
        for (std::size_t i = 0; i < edition.declaredProofs.size(); ++i) {
            const DeclaredProofs& proofs = edition.declaredProofs[i];
            const double share = static_cast<double>(proofs.count) / *edition.declaredNumbered;
            if (proofs.designationKind != DesignationKind::artistsProof || share <= most + 1e-9)
                continue;
            const std::string origin = originWords(context.rules().rule("proofsMostShare"));
            found.add(Severity::note, edition, elementPointer("/declaredProofs", i) + "/count",
                      "artist's proofs are " + percentWords(Estimate::exactly(share)) +
                          " of the numbered size, more than " +
                          percentWords(Estimate::exactly(most)),
                      std::to_string(proofs.count), "Leave it if it is meant: " + origin + ".");
        }
    });
    return found.take();
}

}  // namespace rackbook::rules
