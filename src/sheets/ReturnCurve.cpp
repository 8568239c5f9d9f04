#include "sheets/ReturnCurve.h"

#include "calc/Wording.h"

namespace rackbook {

namespace {

constexpr double boundGrey = 0.45;

// From next to none to nearly all prints.
Plot curvePlot(const LightThreshold& threshold, const SheetWords& words) {
    constexpr int steps = 40;
    constexpr double nearlyAll = 0.97;
    const double most_sunnyDays = threshold.curve().quantile_sunnyDays(nearlyAll);
    Plot plot;
    plot.x = evenAxis(0, most_sunnyDays, words("doses.axis"), 9,
                      [&](double at, int decimals) { return words.figure(at, decimals); });
    plot.y = evenAxis(0, 100, words("doses.axisShare"), 6,
                      [&](double at, int decimals) { return words.figure(at, decimals); });
    PlotLine likely;
    PlotLine low{{}, true, boundGrey, {}};
    PlotLine high = low;
    for (int step = 0; step <= steps; ++step) {
        const double dose = most_sunnyDays * step / steps;
        const Estimate bounds = threshold.probabilityBy(dose);
        likely.points.push_back({dose, threshold.curve().probabilityBy(dose) * 100});
        low.points.push_back({dose, bounds.low * 100});
        high.points.push_back({dose, bounds.high * 100});
    }
    plot.lines = {low, high, likely};
    return plot;
}

std::string sourceText(const LightWantedGroup& group, const SheetWords& words) {
    const std::string count = words.count(static_cast<std::int64_t>(group.count));
    if (group.isLearnt)
        return words.filled("doses.learnt", {{"count", count}});
    return group.count == 0 ? words("doses.learntNone")
                            : words.filled("doses.learntFew", {{"count", count}});
}

}  // namespace

Panel returnCurvePanel(const LightWanted& wanted, const HouseRules& rules,
                       const SheetWords& words) {
    const LightWantedGroup& all = wanted.groups().front();
    const double enough = rules.value("returnedChance");
    std::vector<std::string> sentences = {
        words.filled("doses.curveCaption",
                     {{"half", doseText(all.threshold.quantile_sunnyDays(0.5), words)},
                      {"share", words.withUnit("percent", words.shortFigure(enough * 100))},
                      {"most", doseText(all.threshold.quantile_sunnyDays(enough), words)}}),
        sourceText(all, words)};
    if (wanted.groups().size() > 1)
        sentences.push_back(words.filled(
            "doses.ownGroups",
            {{"count", words.count(static_cast<std::int64_t>(wanted.groups().size() - 1))}}));
    Panel panel;
    panel.content = curvePlot(all.threshold, words);
    panel.caption = words.sentences(sentences);
    panel.alternate = words.sentences({words("doses.curveShows"), panel.caption});
    return panel;
}

std::string doseFigure(double dose_sunnyDays, const SheetWords& words) {
    const RoughFigure rough = roughFigure(dose_sunnyDays);
    return words.figure(rough.value, rough.decimals);
}

std::string doseText(const Estimate& dose_sunnyDays, const SheetWords& words) {
    const std::string low = doseFigure(dose_sunnyDays.low, words);
    const std::string high = doseFigure(dose_sunnyDays.high, words);
    const std::string bounds = low == high ? low : low + "–" + high;
    if (!dose_sunnyDays.isKnown())
        return bounds;
    const std::string best = doseFigure(dose_sunnyDays.best, words);
    return best == bounds ? best : best + " (" + bounds + ")";
}

}  // namespace rackbook
