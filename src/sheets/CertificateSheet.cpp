#include "sheets/CertificateSheet.h"

#include "sheets/CertificateParts.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetSetup.h"
#include "sheets/ShortTitle.h"

namespace rackbook {

namespace {

using certificateparts::Content;

struct Section {
    const char* name;
    void (*add)(Flow& flow, const Content& content);
};

const std::vector<Section>& allSections() {
    namespace parts = certificateparts;
    static const std::vector<Section> sections = {
        {"photograph", parts::addPhotograph}, {"identity", parts::addIdentity},
        {"layers", parts::addLayers},         {"light", parts::addLight},
        {"provenance", parts::addProvenance}, {"code", parts::addCode},
        {"statement", parts::addStatement},   {"signatures", parts::addSignatures}};
    return sections;
}

// A photograph there is or there isn't, and only a certificate is signed; of all else the sheet
// says that nothing is recorded.
bool hasAny(const Section& section, const CertificateImpression& own) {
    if (section.name == std::string("signatures"))
        return own.isCertified();
    return section.name != std::string("photograph") || own.photograph.has_value();
}

FlowSetup setupOf(const Content& content, const SheetTemplate& sheetTemplate,
                  const std::string& created) {
    const SheetWords& words = content.words;
    const Edition& edition = content.edition.edition;
    const std::string name = certificateparts::nameOf(content.own.impression, words);
    FlowSetup setup =
        sheetSetup(sheetTemplate, words, content.edition.studio, content.edition.asOf, created);
    setup.runningTitle = edition.code + " " + name + " · " + shortTitle(edition.title);
    setup.info.title = edition.title + " (" + edition.code + " " + name + ")";
    setup.info.subject = words(content.own.isCertified() ? "sheet" : "identity.record");
    return setup;
}

}  // namespace

TemplateRules certificateSheetRules() {
    TemplateRules rules;
    rules.sheet = "certificate";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer");
    addPhotographKeys(rules.labels);
    add("photograph", "ofIt ofEdition");
    add("identity",
        "designation kind notSigned signedOn working workingNumber fate edition maker year "
        "process printer printers publisher paper image sheet size sizeTotal stillOpen record "
        "recordOf");
    add("layers",
        "ordinal colour printedOn portion extender drier remembered rememberedNone shareNote "
        "notSeen inks inkPart inkPart.one inksNotRecorded");
    addLabelKeysOf<LotKind>(rules.labels, "layers.kind");
    add("light",
        "days daysOf orMore noneAsked dose doseOf doseOf.one notEstimated looks looksAtIt "
        "looksAtOthers noneAtIt noLooks verdict ready lookDue moreLight bringOut unknown "
        "notAffected notKept note");
    add("provenance",
        "consign lend sell give return destroy other step stepTo line none holder lastPlace "
        "noPlace");
    add("statement", "overdue planned different");
    add("code", "shows note");
    add("signatures", "maker printer");
    return rules;
}

std::string certificateCode(const Edition& edition, const Impression& impression,
                            const RecordInside& record) {
    return "rackbook " + edition.code + " " +
           impression.designation.value_or("working-" + std::to_string(impression.workingNumber)) +
           " sha256:" + record.sha256;
}

PageModel certificateSheet(const CertificateFacts& facts, const CertificateImpression& own,
                           const RecordInside& record, const SheetTemplate& sheetTemplate,
                           const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    const Content content{facts.edition, own, record, words};
    Flow flow(measurer, setupOf(content, sheetTemplate, created));
    flow.title(facts.edition.edition.title,
               words.filled(own.isCertified() ? "subtitle" : "identity.recordOf",
                            {{"impression", certificateparts::nameOf(own.impression, words)}}));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name || !hasAny(section, own))
                continue;
            flow.heading(1, words(name));
            section.add(flow, content);
        }
    return flow.finish();
}

}  // namespace rackbook
