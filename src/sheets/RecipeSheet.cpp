#include "sheets/RecipeSheet.h"

#include <algorithm>

#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/RecipeParts.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

struct Section {
    const char* name;
    void (*add)(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
    void (*addNarrow)(Flow& flow, const RecipeFacts& facts, const SheetWords& words);
    bool (*hasSome)(const RecipeFacts& facts);
};

bool always(const RecipeFacts&) {
    return true;
}

const std::vector<Section>& allSections() {
    namespace parts = recipeparts;
    static const std::vector<Section> sections = {
        {"identity", parts::addIdentity, parts::addIdentity, always},
        {"before", parts::addBefore, parts::addBefore, parts::hasBefore},
        {"steps", parts::addSteps, parts::addSteps, always},
        {"outcome", parts::addOutcome, parts::addOutcome, parts::canBeWeighed},
        {"composition", parts::addComposition, parts::addComposition, parts::hasComposition},
        {"colour", parts::addColour, parts::addColourInRows, always}};
    return sections;
}

std::string nameOf(const RecipeFacts& facts) {
    return facts.layer ? facts.layer->colourWords : facts.mix->name;
}

FlowSetup setupOf(const RecipeFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    const std::string id = facts.layer ? facts.layer->id : facts.mix->id;
    setup.runningTitle = words("sheet") + " · " + id;
    setup.info.title = words("sheet") + " · " + nameOf(facts) + " (" + id + ")";
    setup.info.subject = words("sheet");
    return setup;
}

}  // namespace

TemplateRules recipeSheetRules() {
    TemplateRules rules;
    rules.sheet = "recipe";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet footer");
    add("identity",
        "edition layer layerOf mix made runs run run.one runSource runAlike runDiffers runUnknown "
        "notPrinted filmAimed filmNotAimed filmLaid filmLaidOf film");
    addLabelKeysOf<MixPurpose>(rules.labels, "identity.purpose");
    add("before",
        "replaced strengthDiffers baseDiffers metalsDiffer gramForGram factor leftNotKnown "
        "tooLittle tooLittleTogether needsMatching noneAlike holdsLess drierWasEarlier "
        "jarEnough jarShort jarThere");
    add("steps",
        "lead balance balanceNotRecorded balanceAssumed order cannot smallest notWithin tooHeavy "
        "whyNot namesNoMix mass what pigments share weighed step coloursOf letDown "
        "fromStep goOn wanted printNow");
    add("outcome",
        "lot recipe weighed off uncertainty allColour note limitOf drierRough otherWays");
    add("composition",
        "ofRun ofMix part kind pigments share range metals metalIn unrecorded unrecordedAll "
        "remembered nothing");
    add("colour",
        "swatch swatchAlternate curveAlternate aim drawdown drawdownMeasured printMeasured "
        "paperMeasured takenOn film wavelength reflectance note noLab typed frame frameAlternate "
        "scrap dateAndBy filmAndPaper");
    return rules;
}

PageModel recipeSheet(const RecipeFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    const FlowSetup setup = setupOf(facts, sheetTemplate, words, created);
    const bool isNarrow = setup.paper.width_mm - setup.margins.left_mm - setup.margins.right_mm <
                          recipeparts::leastWidthInARow_mm;
    Flow flow(measurer, setup);
    flow.title(nameOf(facts), words("sheet"));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name || !section.hasSome(facts))
                continue;
            flow.heading(1, words(name));
            (isNarrow ? section.addNarrow : section.add)(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
