#include <algorithm>

#include "sheets/ReadingText.h"
#include "sheets/RecipeParts.h"

namespace rackbook::recipeparts {

namespace {

constexpr double rowHeight_mm = 45;
constexpr double frameHeight_mm = 52;  // room for a drawdown of 50 × 50 mm

Plot plotOf(const std::vector<PlotPoint>& curve, const SheetWords& words) {
    constexpr double from_nm = 380;
    constexpr double to_nm = 730;
    const auto tick = [&](double at, int decimals) { return words.figure(at, decimals); };
    Plot plot;
    plot.x = evenAxis(from_nm, to_nm, words("colour.wavelength"), 8, tick);
    plot.y = evenAxis(0, 1, words("colour.reflectance"), 5, tick);
    PlotLine line;
    line.points = curve;
    plot.lines.push_back(std::move(line));
    return plot;
}

std::string plotWords(const std::vector<PlotPoint>& curve, const SheetWords& words) {
    const auto [low, high] =
        std::minmax_element(curve.begin(), curve.end(),
                            [](const PlotPoint& a, const PlotPoint& b) { return a.y < b.y; });
    return words.filled("colour.curveAlternate", {{"low", words.figure(low->y, 2)},
                                                  {"lowAt", words.figure(low->x, 0)},
                                                  {"high", words.figure(high->y, 2)},
                                                  {"highAt", words.figure(high->x, 0)}});
}

std::string whatWasMeasured(const RecipeColour& colour, const SheetWords& words) {
    if (colour.drawdown) {
        std::vector<std::string> parts = {colour.drawdown->substrate};
        if (colour.drawdown->filmWeight_gm2)
            parts.push_back(words.filled(
                "colour.film", {{"weight", words.shortFigure(*colour.drawdown->filmWeight_gm2)}}));
        if (colour.drawdown->madeOn)
            parts.push_back(words.date(*colour.drawdown->madeOn));
        return words.filled("colour.drawdownMeasured", {{"what", words.inRow(parts)}});
    }
    return words(colour.reading.impression ? "colour.printMeasured" : "colour.paperMeasured");
}

std::string conditionsOf(const RecipeColour& colour, const SheetWords& words) {
    std::vector<std::string> sentences = {
        words(colour.isAim ? "colour.aim" : "colour.drawdown"), whatWasMeasured(colour, words),
        words.filled("colour.takenOn", {{"date", words.dateOrNotRecorded(colour.reading.takenOn)},
                                        {"conditions", conditionsText(colour.reading, words)}})};
    return words.sentences(sentences);
}

}  // namespace

namespace {

Panel frame(const SheetWords& words) {
    return {EmptyFrame{}, words("colour.frame"), words("colour.frameAlternate"), 1.1};
}

// For something to compare the drawdown with, where there is no reading.
Panel scrapFrame(const SheetWords& words) {
    return {EmptyFrame{}, words("colour.scrap"), words("colour.frameAlternate"), 1.1};
}

// Swatch and curve, as far as there are any.
std::vector<Panel> measured(const RecipeFacts& facts, const SheetWords& words) {
    std::vector<Panel> panels;
    if (!facts.colour)
        return panels;
    const RecipeColour& colour = *facts.colour;
    if (colour.lab && canBeDrawn(*colour.lab)) {
        const std::string lab = labText(*colour.lab, words);
        panels.push_back({*colour.lab, words("colour.swatch") + "\n" + lab,
                          words.filled("colour.swatchAlternate", {{"lab", lab}}), 0.7});
    }
    if (!colour.curve.empty())
        panels.push_back({plotOf(colour.curve, words), {}, plotWords(colour.curve, words), 1.3});
    return panels;
}

void addReading(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    if (!facts.colour)
        return;
    const RecipeColour& colour = *facts.colour;
    std::vector<std::string> sentences = {conditionsOf(colour, words)};
    if (!colour.lab)
        sentences.push_back(words("colour.noLab"));
    else
        sentences.push_back(words(colour.curve.empty() ? "colour.typed" : "colour.note"));
    flow.paragraph(words.sentences(sentences), TextStyle::small);
}

void addLinesToFillIn(Flow& flow, const SheetWords& words) {
    flow.signatureLines({words("colour.dateAndBy"), words("colour.filmAndPaper")});
}

}  // namespace

void addColour(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    std::vector<Panel> panels = measured(facts, words);
    if (panels.empty())
        panels.push_back(scrapFrame(words));
    panels.push_back(frame(words));
    flow.panels(panels, frameHeight_mm);
    addLinesToFillIn(flow, words);
    addReading(flow, facts, words);
}

void addColourInRows(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    const std::vector<Panel> panels = measured(facts, words);
    if (!panels.empty())
        flow.panels(panels, rowHeight_mm);
    addReading(flow, facts, words);
    flow.panels({frame(words)}, frameHeight_mm);
    addLinesToFillIn(flow, words);
}

}  // namespace rackbook::recipeparts
