#include <algorithm>
#include <cmath>

#include "sheets/CertificateParts.h"
#include "sheets/DateColumn.h"
#include "sheets/ReadinessGroups.h"
#include "sheets/ShareText.h"

namespace rackbook::certificateparts {

namespace {

// Two digits that count.
std::string roughly(double value, const SheetWords& words) {
    if (!(value > 0))
        return words.figure(0, 0);
    const int exponent = static_cast<int>(std::floor(std::log10(value)));
    const double unit = std::pow(10.0, exponent - 1);
    return words.figure(std::round(value / unit) * unit, std::clamp(1 - exponent, 0, 4));
}

// "21 (1.1–250)", "1.1–250", "21 or more"
std::string roughly(const Estimate& value, const SheetWords& words) {
    if (std::isinf(value.high))
        return words.filled("light.orMore", {{"value", roughly(value.low, words)}});
    const std::string low = roughly(value.low, words);
    const std::string high = roughly(value.high, words);
    const std::string bounds = low == high ? low : low + "–" + high;
    if (!value.isKnown())
        return bounds;
    const std::string best = roughly(value.best, words);
    return best == bounds ? best : best + " (" + bounds + ")";
}

bool isJudgedByLayer(const OwnLight& light) {
    return light.richOn.has_value();
}

std::string daysText(const OwnLight& light, const SheetWords& words) {
    if (!isJudgedByLayer(light))
        return words(light.verdict == Verdict::notAffected ? "light.noneAsked" : "notKnown");
    // More than any studio has existed: the count has no upper end.
    constexpr double mostDays = 1e6;
    const std::string days =
        light.daysHigh > mostDays
            ? words.filled("light.orMore",
                           {{"value", wholeDays(light.daysLow, light.daysLow, words)}})
            : wholeDays(light.daysLow, light.daysHigh, words);
    return words.filled("light.daysOf", {{"days", days},
                                         {"needed", words.shortFigure(light.daysNeeded)},
                                         {"layer", std::to_string(light.richLayer)},
                                         {"date", words.when(*light.richOn)}});
}

std::string doseText(const OwnLight& light, const SheetWords& words) {
    if (!light.dose_sunnyDays)
        return words("light.notEstimated");
    const std::string dose = roughly(*light.dose_sunnyDays, words);
    return words.counted("light.doseOf", dose, {{"dose", dose}});
}

std::string looksText(const std::vector<OwnLook>& looks, const SheetWords& words) {
    if (looks.empty())
        return words("light.noLooks");
    const OwnLook& last = looks.back();
    std::vector<std::string> found;
    if (last.touch)
        found.push_back(words.of("touch", *last.touch));
    if (last.colour)
        found.push_back(words.of("lookColour", *last.colour));
    return words.filled("light.looksOf",
                        {{"count", words.count(static_cast<std::int64_t>(looks.size()))},
                         {"date", words.date(last.at)},
                         {"found", words.inRow(found)}});
}

std::string stepText(const ProvenanceStep& step, const SheetWords& words) {
    const std::string& what = words.of("provenance", step.why);
    const std::string date = words.when(step.on);
    return step.to.empty() ? words.filled("provenance.step", {{"what", what}, {"date", date}})
                           : words.filled("provenance.stepTo",
                                          {{"what", what}, {"date", date}, {"name", step.to}});
}

void addNotSeen(Flow& flow, const Content& content) {
    std::vector<std::string> layers;
    for (const int ordinal : content.own.notSeen)
        layers.push_back(std::to_string(ordinal));
    if (!layers.empty())
        flow.paragraph(
            content.words.filled("layers.notSeen", {{"layers", content.words.listed(layers)}}),
            TextStyle::small);
}

}  // namespace

void addLayers(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    if (content.own.pulls.empty()) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    SheetTable table;
    table.columns = {{words("layers.ordinal"), Alignment::right, 0, 13},
                     {words("layers.colour"), Alignment::left, 1, 0},
                     {words("layers.printedOn"), Alignment::left, 0, 0},
                     {words("layers.portion"), Alignment::left, 1, 0},
                     {words("layers.extender"), Alignment::right, 0, 23},
                     {words("layers.drier"), Alignment::right, 0, 21}};
    bool estimates = false;
    for (const OwnPull& pull : content.own.pulls) {
        table.rows.push_back(
            {{std::to_string(pull.ordinal), pull.colourWords, words.tableDate(pull.start),
              pull.portion.empty() ? words("notRecorded") : pull.portion,
              extenderText(pull.extenderShare, pull.isRemembered, words),
              shareText(pull.drierShare, 2, words)}});
        estimates =
            estimates || showsEstimates(pull.extenderShare, pull.isRemembered, pull.drierShare);
    }
    constexpr std::size_t printedOnColumn = 2;
    table.columns[printedOnColumn].fixed_mm = dateWidth_mm(table, printedOnColumn);
    flow.table(table);
    if (estimates)
        flow.paragraph(words("layers.shareNote"), TextStyle::small);
    addNotSeen(flow, content);
}

void addLight(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    const std::optional<OwnLight>& light = content.own.light;
    if (!light) {
        flow.labelValues({{words("light.looks"), looksText(content.own.looks, words)},
                          {words("light.verdict"), words("light.notKept")}});
        return;
    }
    const std::string date = words.day(content.edition.asOf);
    std::vector<LabelValue> rows = {{words("light.days"), daysText(*light, words)}};
    if (isJudgedByLayer(*light))
        rows.push_back({words("light.dose"), doseText(*light, words)});
    rows.push_back({words("light.looks"), looksText(content.own.looks, words)});
    rows.push_back(
        {words("light.verdict"),
         words.filled(std::string("light.") + textOf(light->verdict), {{"date", date}})});
    flow.labelValues(rows);
    flow.paragraph(words("light.note"), TextStyle::small);
}

void addProvenance(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    std::vector<std::string> steps;
    for (const ProvenanceStep& step : content.own.provenance)
        steps.push_back(stepText(step, words));
    if (steps.empty())
        flow.paragraph(words(content.own.isWithHolder ? "provenance.holder" : "provenance.none"));
    else
        flow.paragraph(words.filled("provenance.line", {{"steps", words.apart(steps)}}));
}

}  // namespace rackbook::certificateparts
