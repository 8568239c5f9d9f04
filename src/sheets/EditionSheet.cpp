#include "sheets/EditionSheet.h"

#include <algorithm>

#include "base/CivilTime.h"
#include "calc/Disclosure.h"
#include "sheets/EditionParts.h"
#include "sheets/Flow.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

struct Section {
    const char* name;
    void (*add)(Flow& flow, const EditionFacts& facts, const SheetWords& words);
};

const std::vector<Section>& allSections() {
    namespace parts = editionparts;
    static const std::vector<Section> sections = {{"identity", parts::addIdentity},
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

const std::vector<std::string>& ownLabels() {
    static const std::vector<std::string> keys = {"sheet",
                                                  "footer",
                                                  "pageOf",
                                                  "notRecorded",
                                                  "notKnown",
                                                  "estimate",
                                                  "caution",
                                                  "identity.code",
                                                  "identity.maker",
                                                  "identity.printer",
                                                  "identity.printers",
                                                  "identity.publisher",
                                                  "identity.process",
                                                  "identity.year",
                                                  "identity.studio",
                                                  "identity.state",
                                                  "identity.open",
                                                  "identity.closed",
                                                  "inscriptions.what",
                                                  "inscriptions.where",
                                                  "inscriptions.medium",
                                                  "paper.name",
                                                  "paper.image",
                                                  "paper.sheet",
                                                  "paper.mm",
                                                  "paper.inches",
                                                  "count.kind",
                                                  "count.inscription",
                                                  "count.declared",
                                                  "count.signed",
                                                  "count.difference",
                                                  "count.total",
                                                  "count.withoutKind",
                                                  "count.stated",
                                                  "count.statedAgrees",
                                                  "count.statedDiffers",
                                                  "count.sheets",
                                                  "count.printedFirst",
                                                  "count.printedFirstAndOthers",
                                                  "count.sum",
                                                  "count.keptSum",
                                                  "count.outOf",
                                                  "count.recorded",
                                                  "count.kept",
                                                  "count.cap",
                                                  "blocks.block",
                                                  "blocks.material",
                                                  "blocks.role",
                                                  "blocks.fate",
                                                  "blocks.state",
                                                  "blocks.cut",
                                                  "blocks.cutOn",
                                                  "layers.ordinal",
                                                  "layers.reading",
                                                  "layers.colour",
                                                  "layers.block",
                                                  "layers.stateOf",
                                                  "layers.stateOnly",
                                                  "layers.coverage",
                                                  "layers.filmAimed",
                                                  "layers.filmLaid",
                                                  "layers.filmNote",
                                                  "layers.readingNote",
                                                  "layers.readingOther",
                                                  "layers.runs",
                                                  "layers.printedOn",
                                                  "layers.portion",
                                                  "layers.sheets",
                                                  "layers.spoiled",
                                                  "layers.extender",
                                                  "layers.drier",
                                                  "layers.remembered",
                                                  "layers.rememberedNone",
                                                  "layers.notPrinted",
                                                  "layers.white",
                                                  "layers.black",
                                                  "layers.self",
                                                  "layers.backing",
                                                  "layers.shareNote",
                                                  "mixes.lots",
                                                  "mixes.lot",
                                                  "mixes.kind",
                                                  "mixes.pigments",
                                                  "mixes.container",
                                                  "mixes.id",
                                                  "mixes.part",
                                                  "mixes.share",
                                                  "mixes.range",
                                                  "mixes.layer",
                                                  "mixes.pulled",
                                                  "mixes.ofMix",
                                                  "mixes.remembered",
                                                  "mixes.rememberedNone",
                                                  "mixes.unrecorded",
                                                  "mixes.unrecordedAll",
                                                  "mixes.notPrinted",
                                                  "mixes.note",
                                                  "mixes.caution",
                                                  "mixes.metalContent",
                                                  "impressions.designation",
                                                  "impressions.working",
                                                  "impressions.signedOn",
                                                  "impressions.unsigned",

                                                  "impressions.numbers",
                                                  "impressions.lost",
                                                  "impressions.withoutKind",
                                                  "impressions.keptAll",
                                                  "impressions.fateOn",
                                                  "matrix.block",
                                                  "matrix.promised",
                                                  "matrix.recorded",
                                                  "matrix.nothingPromised",
                                                  "matrix.promisedBy",
                                                  "matrix.overdue",
                                                  "matrix.planned",
                                                  "matrix.different",
                                                  "disclosure.item",
                                                  "disclosure.answer",
                                                  "disclosure.words",
                                                  "disclosure.stated",
                                                  "disclosure.notApplicable",
                                                  "disclosure.notKnown",
                                                  "disclosure.fromRecord",
                                                  "disclosure.note",
                                                  "disclosure.source",
                                                  "disclosure.unsignedWords",
                                                  "disclosure.blockWords",
                                                  "signatures.maker",
                                                  "signatures.printer"};
    return keys;
}

template <class E>
void addEnumerators(const std::string& prefix, std::vector<std::string>& labels) {
    for (const std::string& name : enumNames<E>())
        labels.push_back(prefix + "." + name);
}

FlowSetup setupOf(const EditionFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetTemplate.flowSetup();
    const std::string asOf = words.filled("footer", {{"date", formatDay(facts.asOf)}});
    setup.footer = facts.studio.empty() ? asOf : facts.studio + " · " + asOf;
    setup.runningTitle = facts.edition.code + " · " + facts.edition.title;
    setup.info.title = facts.edition.title + " (" + facts.edition.code + ")";
    setup.info.author = facts.studio;
    setup.info.subject = words("sheet");
    setup.info.created = created;
    return setup;
}

}  // namespace

TemplateRules editionSheetRules() {
    TemplateRules rules;
    rules.sheet = "edition";
    rules.labels = SheetWords::labels();
    rules.labels.insert(rules.labels.end(), ownLabels().begin(), ownLabels().end());
    for (const Section& section : allSections()) {
        rules.sections.push_back(section.name);
        rules.labels.push_back(section.name);
    }
    addEnumerators<DesignationKind>("count", rules.labels);
    addEnumerators<MatrixFate>("blocks", rules.labels);
    addEnumerators<LotKind>("mixes", rules.labels);
    addEnumerators<Container>("mixes", rules.labels);
    addEnumerators<ImpressionFate>("impressions", rules.labels);
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
            if (name != section.name)
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
