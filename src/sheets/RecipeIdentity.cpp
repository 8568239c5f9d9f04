#include "sheets/EstimateText.h"
#include "sheets/RecipeParts.h"

namespace rackbook::recipeparts {

namespace {

std::string runText(const RecipeRun& run, std::size_t runs, const SheetWords& words) {
    const std::string sheets = words.count(run.goodSheets);
    const std::string text = words.counted("identity.run", sheets,
                                           {{"date", words.date(run.start)}, {"sheets", sheets}});
    if (run.isSource)
        return runs > 1 ? text + " – " + words("identity.runSource") : text;
    if (!run.isComputable)
        return text + " – " + words("identity.runUnknown");
    constexpr double nothing = 5e-5;
    return text + " – " +
           (run.mostDifference > nothing
                ? words.filled("identity.runDiffers",
                               {{"share", words.percent(run.mostDifference, 2)}})
                : words("identity.runAlike"));
}

std::string runsText(const RecipeFacts& facts, const SheetWords& words) {
    if (facts.runs.empty())
        return words("identity.notPrinted");
    std::string text;
    for (const RecipeRun& run : facts.runs)
        text += (text.empty() ? "" : "\n") + runText(run, facts.runs.size(), words);
    return text;
}

std::string mixText(const Mix& mix, const SheetWords& words) {
    std::vector<std::string> parts = {mix.name + " (" + mix.id + ")",
                                      words.of("identity.purpose", mix.purpose)};
    if (mix.madeOn)
        parts.push_back(words.filled("identity.made", {{"date", words.when(*mix.madeOn)}}));
    return words.inRow(parts);
}

}  // namespace

void addIdentity(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    std::vector<LabelValue> entries;
    if (facts.layer && facts.edition)
        entries.push_back(
            {words("identity.layer"),
             words.filled("identity.layerOf", {{"layer", std::to_string(facts.layer->ordinal)},
                                               {"edition", facts.edition->title},
                                               {"code", facts.edition->code}})});
    else if (facts.edition)
        entries.push_back(
            {words("identity.edition"), facts.edition->title + " (" + facts.edition->code + ")"});
    if (facts.mix)
        entries.push_back({words("identity.mix"), mixText(*facts.mix, words)});
    if (facts.layer) {
        entries.push_back({words("identity.runs"), runsText(facts, words)});
        const std::optional<double>& aimed = facts.layer->filmWeight_gm2;
        const std::string aim =
            aimed ? words.filled("identity.filmAimed",
                                 {{"weight", words.withUnit("gm2", words.shortFigure(*aimed))}})
                  : words("identity.filmNotAimed");
        const std::string laid =
            facts.filmLaid_gm2.isKnown()
                ? words.filled("identity.filmLaidOf",
                               {{"weight", estimateText(facts.filmLaid_gm2, 1, words)}})
                : words.filled("identity.filmLaid", {{"weight", words("notKnown")}});
        entries.push_back({words("identity.film"), words.inRow({aim, laid})});
    }
    flow.labelValues(entries);
}

}  // namespace rackbook::recipeparts
