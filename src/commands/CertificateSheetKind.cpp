#include "commands/CertificateSheetKind.h"

#include "base/Sha256.h"
#include "sheets/CertificateSheet.h"

namespace rackbook {

namespace {

SheetAbout aboutOne(const Edition& edition, const Impression& impression) {
    SheetAbout about;
    about.edition = edition.id;
    about.impressions = {impression.id};
    return about;
}

std::vector<PageModel> make(const SheetRequest& request) {
    const Edition& edition = *request.subject.edition;
    const CertificateFacts facts =
        certificateFactsOf(request.records, edition, request.subject.impressions, request.asOf,
                           request.namesHolders, request.pictureOf);
    std::vector<PageModel> documents;
    std::set<std::string> names;
    for (const CertificateImpression& own : facts.impressions) {
        AssociatedFile record = request.recordBehind(aboutOne(edition, own.impression));
        giveNameOfItsOwn(record.name, names);
        documents.push_back(certificateSheet(facts, own, {record.name, sha256(record.bytes)},
                                             request.sheetTemplate, request.measurer,
                                             request.created));
        documents.back().files.push_back(std::move(record));
        if (request.oneIsDone)
            request.oneIsDone();
    }
    return documents;
}

}  // namespace

SheetKind certificateSheetKind() {
    SheetKind kind;
    kind.name = "certificate";
    kind.what =
        "certifies each impression: what it is, how it was printed, its light and readiness";
    kind.subject = SubjectKind::impressions;
    kind.depth.light = true;
    kind.depth.transfers = true;
    kind.depth.photographs = true;
    kind.rules = certificateSheetRules;
    kind.make = make;
    return kind;
}

}  // namespace rackbook
