#include "sheets/EditionSheet.h"

#include "calc/Disclosure.h"
#include "sheets/EditionParts.h"
#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"
#include "sheets/ShortTitle.h"

namespace rackbook {

namespace {

struct Section {
    const char* name;
    void (*add)(Flow& flow, const EditionFacts& facts, const SheetWords& words);
};

const std::vector<Section>& allSections() {
    namespace parts = editionparts;
    static const std::vector<Section> sections = {{"identity", parts::addIdentity},
                                                  {"photograph", parts::addPhotograph},
                                                  {"inscriptions", parts::addInscriptions},
                                                  {"paper", parts::addPaper},
                                                  {"count", parts::addCount},
                                                  {"blocks", parts::addBlocks},
                                                  {"layers", parts::addLayers},
                                                  {"mixes", parts::addInks},
                                                  {"impressions", parts::addImpressions},
                                                  {"matrix", parts::addMatrix},
                                                  {"statement", parts::addStatement},
                                                  {"disclosure", parts::addDisclosure},
                                                  {"signatures", parts::addSignatures}};
    return sections;
}

// A photograph there is or there isn't; of all else the sheet says that nothing is recorded.
bool hasAny(const Section& section, const EditionFacts& facts) {
    return section.name != std::string("photograph") || facts.photograph.has_value();
}

FlowSetup setupOf(const EditionFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    setup.runningTitle = facts.edition.code + " · " + shortTitle(facts.edition.title);
    setup.info.title = facts.edition.title + " (" + facts.edition.code + ")";
    setup.info.subject = words("sheet");
    return setup;
}

}  // namespace

TemplateRules editionSheetRules() {
    TemplateRules rules;
    rules.sheet = "edition";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet footer");
    add("identity", "code maker printer printers publisher process year studio state open closed");
    addPhotographKeys(rules.labels);
    add("inscriptions", "what where medium");
    add("paper", "name image sheet");
    add("count",
        "kind inscription declared signed difference total withoutKind stated statedAgrees "
        "statedDiffers sheets printedFirst printedFirstAndOthers sum keptSum outOf recorded "
        "recordedOnly untraced kept "
        "cap");
    add("blocks", "block material role fate state cut cutOn");
    add("layers",
        "ordinal reading colour block stateOf stateOnly coverage filmAimed filmLaid filmNote "
        "readingNote readingOther runs printedOn portion sheets numbers spoiled extender drier "
        "remembered "
        "rememberedNone notPrinted shareNote");
    add("mixes",
        "lots lot kind pigments container bought opened id part share range layer pulled pulledOf "
        "pulledFrom ofMix remembered "
        "rememberedNone unrecorded unrecordedAll notPrinted note");
    add("impressions",
        "designation working signedOn unsigned numbers lost withoutKind keptAll fateOn lostOn");
    add("impressions.lost", "spoiled spoiled.one destroyed destroyed.one");
    add("matrix", "block promised recorded nothingPromised promisedBy overdue planned different");
    add("disclosure",
        "item answer words stated notApplicable notKnown fromRecord note source fromRecordNote "
        "unsignedWords blockWords");
    add("signatures", "maker printer");
    for (const DisclosureItem& item : disclosureItems())
        rules.labels.push_back(std::string("disclosure.") + item.item);
    return rules;
}

PageModel editionSheet(const EditionFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(facts.edition.title, words("sheet"));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name || !hasAny(section, facts))
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
