#include <algorithm>
#include <cmath>

#include "sheets/CertificateParts.h"
#include "sheets/DateColumn.h"
#include "sheets/ReadinessGroups.h"
#include "sheets/ReturnCurve.h"
#include "sheets/ShareText.h"

namespace rackbook::certificateparts {

namespace {

// "21 (1.1–250)", "1.1–250", "21 or more"
std::string roughly(const Estimate& dose_sunnyDays, const SheetWords& words) {
    return std::isinf(dose_sunnyDays.high)
               ? words.filled("light.orMore", {{"value", doseFigure(dose_sunnyDays.low, words)}})
               : doseText(dose_sunnyDays, words);
}

bool isJudgedByLayer(const OwnLight& light) {
    return light.richOn.has_value();
}

std::string daysText(const OwnLight& light, const SheetWords& words) {
    if (!isJudgedByLayer(light))
        return words(light.verdict == Verdict::unknown ? "notKnown" : "light.noneAsked");
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

std::string foundText(const OwnLook& look, const SheetWords& words) {
    std::vector<std::string> found;
    if (look.touch)
        found.push_back(words.of("touch", *look.touch));
    if (look.colour)
        found.push_back(words.of("lookColour", *look.colour));
    return words.inRow(found);
}

// Those at the sheet itself, and on a line below those at others that stood for it.
std::string looksText(const std::vector<OwnLook>& looks, const SheetWords& words) {
    if (looks.empty())
        return words("light.noLooks");
    std::string text;
    for (const bool isAtIt : {true, false}) {
        const auto isOne = [&](const OwnLook& look) { return look.isAtIt == isAtIt; };
        const auto last = std::find_if(looks.rbegin(), looks.rend(), isOne);
        if (!isAtIt && last != looks.rend())
            text += "\n";
        if (last != looks.rend())
            text += words.filled(
                isAtIt ? "light.looksAtIt" : "light.looksAtOthers",
                {{"count", words.count(std::count_if(looks.begin(), looks.end(), isOne))},
                 {"date", words.date(last->at)},
                 {"found", foundText(*last, words)}});
        else if (isAtIt)
            text += words("light.noneAtIt");
    }
    return text;
}

// The day of the last look at the colour, whichever sheet it was at.
std::string lastLookText(const std::vector<OwnLook>& looks, const SheetWords& words) {
    const auto last = std::find_if(looks.rbegin(), looks.rend(),
                                   [](const OwnLook& look) { return look.colour.has_value(); });
    return last == looks.rend() ? words("notRecorded") : words.date(last->at);
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
    addInkParts(flow, content);
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
         words.filled(std::string("light.") + textOf(light->verdict),
                      {{"date", date}, {"look", lastLookText(content.own.looks, words)}})});
    flow.labelValues(rows);
    flow.paragraph(words("light.note"), TextStyle::small);
}

void addProvenance(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    std::vector<std::string> steps;
    for (const ProvenanceStep& step : content.own.provenance)
        steps.push_back(stepText(step, words));
    if (!steps.empty()) {
        flow.paragraph(words.filled("provenance.line", {{"steps", words.apart(steps)}}));
        return;
    }
    const std::optional<EdtfDate>& placedOn = content.own.placedOn;
    flow.paragraph(words.sentences(
        {words(content.own.isWithHolder ? "provenance.holder" : "provenance.none"),
         placedOn ? words.filled("provenance.lastPlace", {{"date", words.date(*placedOn)}})
                  : words("provenance.noPlace")}));
}

}  // namespace rackbook::certificateparts
