// The sections of a certificate. Private to sheets/.
#pragma once

#include "sheets/CertificateFacts.h"
#include "sheets/CertificateSheet.h"
#include "sheets/Flow.h"
#include "sheets/SheetWords.h"

namespace rackbook::certificateparts {

struct Content {
    const EditionFacts& edition;
    const CertificateImpression& own;
    const RecordInside& record;
    const SheetWords& words;
};

// Each adds what stands below its heading. The heading is set already.
void addIdentity(Flow& flow, const Content& content);
void addPhotograph(Flow& flow, const Content& content);  // pre: there is one
void addLayers(Flow& flow, const Content& content);
void addLight(Flow& flow, const Content& content);
void addProvenance(Flow& flow, const Content& content);
void addStatement(Flow& flow, const Content& content);
void addCode(Flow& flow, const Content& content);
void addSignatures(Flow& flow, const Content& content);

// What the inks of its layers hold, lot by lot; part of the section of the layers.
void addInkParts(Flow& flow, const Content& content);

// "7/30", or "working number 12" where it is not signed yet.
std::string nameOf(const Impression& impression, const SheetWords& words);

}  // namespace rackbook::certificateparts
