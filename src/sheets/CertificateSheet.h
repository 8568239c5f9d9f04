// The certificate of one impression.
#pragma once

#include <string>

#include "sheets/CertificateFacts.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules certificateSheetRules();

// The record that is carried inside the file, for the code on the sheet.
struct RecordInside {
    std::string fileName;
    std::string sha256;  // of its bytes, 64 lower-case hexadecimal digits
};

// What the code on a certificate says: "rackbook EEL 7/30 sha256:…", with "working-12" where it has
// no designation yet.
std::string certificateCode(const Edition& edition, const Impression& impression,
                            const RecordInside& record);

// The sections of the template in its order. `created` as in DocumentInfo. What is not known is
// called so; notes and contacts stand on no part of it, and holders only where the facts name them.
// Throws RenderError for text that cannot be set.
// Pre: `own` is one of facts.impressions; the template was read with certificateSheetRules().
PageModel certificateSheet(const CertificateFacts& facts, const CertificateImpression& own,
                           const RecordInside& record, const SheetTemplate& sheetTemplate,
                           const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
