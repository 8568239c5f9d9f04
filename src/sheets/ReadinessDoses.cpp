#include "sheets/ReadinessDoses.h"

#include <algorithm>
#include <cmath>

#include "calc/DoseCurve.h"
#include "sheets/LabelKeys.h"
#include "sheets/ReturnCurve.h"

namespace rackbook {

namespace {

constexpr std::size_t mostGroups = 8;
constexpr std::size_t mostPoints = 80;
constexpr double plotHeight_mm = 45;
constexpr double boundGrey = 0.45;

struct SeenLook {
    CivilMinute at = 0;  // the middle where it is badly known
    LookColour colour = LookColour::turned;
};

// One group, by its sample.
struct GroupDose {
    const ReadinessGroup* group = nullptr;
    const ReadinessRow* row = nullptr;
    std::vector<DosePoint> points;  // by time
    std::vector<SeenLook> looks;    // by time
    double look_sunnyDays = 0;      // from here on a look is worth making
    double enough_sunnyDays = 0;    // from here on the light counts as enough
};

bool wantsLightOrLook(Verdict verdict) {
    return verdict == Verdict::bringOut || verdict == Verdict::moreLight ||
           verdict == Verdict::lookDue;
}

std::vector<SeenLook> looksSince(const ReadinessFacts& facts, const ReadinessRow& row) {
    const auto at = static_cast<std::size_t>(row.impression);
    std::vector<SeenLook> looks;
    for (const std::uint32_t* i = facts.history.looksOf.begin(at);
         i != facts.history.looksOf.end(at); ++i) {
        const HistoryLook& look = facts.history.looks[*i];
        if (look.hasColour && look.at.earliest > row.pulled.latest &&
            look.at.earliest <= facts.readiness.asOf)
            looks.push_back(
                {look.at.earliest +
                     (std::min(look.at.latest, facts.readiness.asOf) - look.at.earliest) / 2,
                 look.colour});
    }
    std::stable_sort(looks.begin(), looks.end(),
                     [](const SeenLook& a, const SeenLook& b) { return a.at < b.at; });
    return looks;
}

GroupDose doseOf(const ReadinessFacts& facts, const ReadinessGroup& group) {
    GroupDose dose;
    dose.group = &group;
    dose.row = &facts.readiness.rows[group.sample];
    const ReadinessRow& row = *dose.row;
    if (!row.wanted || row.pull < 0)
        return dose;
    std::vector<Stay> stays;
    staysOf(facts.history, static_cast<std::size_t>(row.impression), facts.readiness.asOf, stays);
    dose.points =
        doseCurveOf(facts.light->ledger(), stays, row.pulled, facts.readiness.asOf, mostPoints);
    dose.looks = looksSince(facts, row);
    const auto doseFor = [&](double chance) {
        return LightWanted::doseFor_sunnyDays(*row.wanted, chance, row.notYet_sunnyDays);
    };
    dose.look_sunnyDays = doseFor(lookChanceFor(row.looks, facts.rules.value("lookChance")));
    dose.enough_sunnyDays = doseFor(facts.rules.value("returnedChance"));
    return dose;
}

// What is known by when is plotted: the likely line ends where nothing is likelier than the rest.
std::vector<PlotPoint> lineOf(const std::vector<DosePoint>& points, double Estimate::*bound) {
    std::vector<PlotPoint> line;
    for (const DosePoint& point : points) {
        const double value = point.dose.sunnyDays.*bound;
        if (std::isnan(value))
            break;
        line.push_back({static_cast<double>(point.at), value});
    }
    return line;
}

// A far high bound would press everything else to the foot; it may leave the plot.
double topOf(const GroupDose& dose) {
    constexpr double farthest = 4;
    constexpr double headroom = 1.08;
    const Estimate& last = dose.points.back().dose.sunnyDays;
    const double likely = std::max(dose.enough_sunnyDays, last.isKnown() ? last.best : last.low);
    return headroom * std::max(likely, std::min(last.high, farthest * likely));
}

std::string shortDay(CivilMinute minute, const SheetWords& words) {
    return words.tableDate(EdtfDate::ofDay(minute));
}

// The first and the last moment, and two between where there are days enough.
std::vector<CivilMinute> momentsOf(const GroupDose& dose) {
    const CivilMinute from = dose.points.front().at;
    const CivilMinute to = dose.points.back().at;
    const std::int64_t parts = std::clamp<std::int64_t>(dayOf(to) - dayOf(from), 1, 3);
    std::vector<CivilMinute> moments;
    for (std::int64_t part = 0; part <= parts; ++part)
        moments.push_back(from + (to - from) * part / parts);
    return moments;
}

Plot plotOf(const GroupDose& dose, const SheetWords& words) {
    Plot plot;
    plot.x.from = static_cast<double>(dose.points.front().at);
    plot.x.to = static_cast<double>(dose.points.back().at);
    for (const CivilMinute moment : momentsOf(dose))
        plot.x.ticks.push_back({static_cast<double>(moment), shortDay(moment, words)});
    plot.y = evenAxis(0, topOf(dose), words("doses.axis"), 5,
                      [&](double at, int decimals) { return words.figure(at, decimals); });
    plot.bands = {{dose.look_sunnyDays, dose.enough_sunnyDays}};
    plot.lines = {{lineOf(dose.points, &Estimate::low), true, boundGrey, {}},
                  {lineOf(dose.points, &Estimate::high), true, boundGrey, {}},
                  {lineOf(dose.points, &Estimate::best), false, 0, {}}};
    for (const SeenLook& look : dose.looks)
        plot.marks.push_back({static_cast<double>(look.at), words.of("lookColour", look.colour)});
    return plot;
}

std::string layerText(const ReadinessFacts& facts, const ReadinessRow& row,
                      const SheetWords& words) {
    return row.layer < 0
               ? words("notKnown")
               : std::to_string(facts.history.layers[static_cast<std::size_t>(row.layer)].ordinal);
}

std::string captionOf(const ReadinessFacts& facts, const GroupDose& dose, const SheetWords& words) {
    const std::string had = doseText(dose.points.back().dose.sunnyDays, words);
    std::vector<std::string> sentences = {
        words.counted("doses.caption", had,
                      {{"impressions", groupName(*dose.group)},
                       {"dose", had},
                       {"layer", layerText(facts, *dose.row, words)},
                       {"date", words.span(dose.row->pulled.earliest, dose.row->pulled.latest)},
                       {"look", doseFigure(dose.look_sunnyDays, words)},
                       {"enough", doseFigure(dose.enough_sunnyDays, words)}})};
    std::vector<std::string> looks;
    for (const SeenLook& look : dose.looks)
        looks.push_back(words.filled(
            "doses.onDay",
            {{"date", words.day(look.at)}, {"found", words.of("lookColour", look.colour)}}));
    sentences.push_back(looks.empty()
                            ? words("doses.noLook")
                            : words.filled("doses.looks", {{"looks", words.inRow(looks)}}));
    return words.sentences(sentences);
}

// The caption, and the course of the lines.
std::string alternateOf(const GroupDose& dose, const std::string& caption,
                        const SheetWords& words) {
    std::vector<std::string> course;
    for (const CivilMinute moment : momentsOf(dose)) {
        const auto after = std::find_if(dose.points.begin(), dose.points.end(),
                                        [&](const DosePoint& point) { return point.at >= moment; });
        course.push_back(words.filled(
            "doses.onDay",
            {{"date", words.day(after->at)}, {"found", doseText(after->dose.sunnyDays, words)}}));
    }
    return words.sentences(
        {caption, words.filled("doses.course", {{"course", words.inRow(course)}})});
}

void addPlots(Flow& flow, const ReadinessFacts& facts, const std::vector<GroupDose>& doses,
              const SheetWords& words) {
    for (std::size_t i = 0; i < doses.size(); i += 2) {
        std::vector<Panel> row;
        for (std::size_t at = i; at < std::min(i + 2, doses.size()); ++at) {
            const std::string caption = captionOf(facts, doses[at], words);
            row.push_back(
                {plotOf(doses[at], words), caption, alternateOf(doses[at], caption, words), 1});
        }
        if (row.size() == 1)
            row.push_back({Gap{}, {}, {}, 1});
        flow.panels(row, plotHeight_mm);
    }
    flow.paragraph(words("doses.legend"), TextStyle::small);
}

void sayNotDrawn(Flow& flow, const char* label, std::size_t count, const SheetWords& words) {
    if (count > 0)
        flow.paragraph(
            words.filled(label, {{"count", words.count(static_cast<std::int64_t>(count))}}),
            TextStyle::small);
}

}  // namespace

void addDoses(Flow& flow, const ReadinessFacts& facts, const std::vector<ReadinessGroup>& groups,
              const SheetWords& words) {
    const LightModel* model = facts.light ? facts.light->model() : nullptr;
    if (!model) {
        flow.paragraph(words("doses.notEstimated"));
        return;
    }
    std::vector<GroupDose> doses;
    std::size_t more = 0;
    std::size_t undated = 0;
    for (const ReadinessGroup& group : groups) {
        if (!wantsLightOrLook(facts.readiness.rows[group.sample].verdict))
            continue;
        if (doses.size() == mostGroups) {
            ++more;
            continue;
        }
        GroupDose dose = doseOf(facts, group);
        if (dose.points.empty() || !std::isfinite(dose.points.back().dose.sunnyDays.high))
            ++undated;
        else
            doses.push_back(std::move(dose));
    }
    if (doses.empty() && undated == 0)
        flow.paragraph(words("doses.nothing"));
    if (!doses.empty())
        addPlots(flow, facts, doses, words);
    sayNotDrawn(flow, "doses.more", more, words);
    sayNotDrawn(flow, "doses.undated", undated, words);
    flow.heading(2, words("doses.curve"));
    flow.panels({returnCurvePanel(model->wanted, facts.rules, words)}, plotHeight_mm);
    flow.paragraph(words.sentences({words("doses.estimates"), words("doses.chanceNote")}),
                   TextStyle::small);
}

void addDoseLabels(std::vector<std::string>& keys) {
    addLabelKeys(keys, "doses",
                 "legend axis caption caption.one looks noLook onDay course more undated nothing "
                 "notEstimated "
                 "curve axisShare curveCaption curveShows learnt learntFew learntNone ownGroups "
                 "estimates chanceNote");
}

}  // namespace rackbook
