#include <algorithm>
#include <cmath>

#include "sheets/LotText.h"
#include "sheets/RecipeParts.h"

namespace rackbook::recipeparts {

namespace {

constexpr int shareDecimals = 3;

void addShare(SheetTable& table, const std::string& name, const std::string& pigments,
              const PlannedShare& share, const SheetWords& words) {
    table.rows.push_back(
        {{name, pigments, words.percent(share.recipe, shareDecimals),
          words.percent(share.planned, shareDecimals), words.percent(share.deviation(), 1),
          words.percent(share.expandedUncertainty(), 1)}});
}

// Drier has no limit, because a wide range of it does; but one may want to know.
std::string drierText(const RecipeFacts& facts, const SheetWords& words) {
    constexpr double worthAWord = 0.25;
    for (const PlannedShare& share : facts.weighing->plan.lots) {
        const double off = std::abs(share.deviation()) + share.expandedUncertainty();
        if (facts.lots[static_cast<std::size_t>(share.lot)].lotKind == LotKind::drier &&
            off > worthAWord)
            return words.filled("outcome.drierRough", {{"share", words.percent(off, 0)}});
    }
    return {};
}

// "our guess, no source" of "our guess, no source: set what the eye forgives".
std::string firstWords(const std::string& source) {
    return source.substr(0, source.find(':'));
}

std::string limitText(const RecipeWeighing& weighing, const SheetWords& words) {
    const std::string limit = words.withUnit(
        "percent", words.shortFigure(std::round(weighing.request.limit * 1e6) / 1e4));
    if (weighing.limitRule.value != weighing.request.limit)
        return limit;
    return words.filled("outcome.limitOf",
                        {{"limit", limit},
                         {"origin", weighing.limitRule.source.empty()
                                        ? words.of("origin", weighing.limitRule.origin)
                                        : firstWords(weighing.limitRule.source)}});
}

std::string shareText(const Estimate& share, const SheetWords& words) {
    return share.isKnown() ? words.percent(share.best, shareDecimals) : words("notKnown");
}

std::string rangeText(const Estimate& share, const SheetWords& words) {
    if (printsAsOne(share, shareDecimals) || (share.low <= 0 && share.high >= 1))
        return {};
    return words.percentRange(share, shareDecimals);
}

// What of each metal is in the ink, where the container states it.
std::string metalsText(const InkFacts& ink, const SheetWords& words) {
    std::vector<std::string> metals;
    for (const InkPart& part : ink.parts)
        for (const DrierMetal& metal : part.lot.drierMetals)
            if (metal.contentShare && part.share.isKnown())
                metals.push_back(words.filled(
                    "composition.metalIn",
                    {{"metal", metalText(metal.metal, words)},
                     {"share", words.percent(part.share.best * *metal.contentShare, 3)}}));
    return metals.empty() ? std::string()
                          : words.filled("composition.metals", {{"metals", words.listed(metals)}});
}

std::string asOfWhat(const RecipeFacts& facts, const SheetWords& words) {
    for (const RecipeRun& run : facts.runs)
        if (run.isSource)
            return words.filled("composition.ofRun", {{"date", words.date(run.start)}});
    return words("composition.ofMix");
}

void addParts(Flow& flow, const InkFacts& ink, const SheetWords& words) {
    bool hasRanges = false;
    for (const InkPart& part : ink.parts)
        hasRanges = hasRanges || !rangeText(part.share, words).empty();
    SheetTable table;
    table.columns = {{words("composition.part"), Alignment::left, 2, 0},
                     {words("composition.kind"), Alignment::left, 0, 20},
                     {words("composition.pigments"), Alignment::left, 1.1, 0},
                     {words("composition.share"), Alignment::decimal, 0, 20}};
    if (hasRanges)
        table.columns.push_back({words("composition.range"), Alignment::right, 0, 30});
    for (const InkPart& part : ink.parts) {
        TableRow row{{shortWords(part.lot.colourWords) + " (" + part.lot.id + ")",
                      words.of("lotKind", part.lot.lotKind), pigmentsText(part.lot, words),
                      shareText(part.share, words)}};
        if (hasRanges)
            row.cells.emplace_back(rangeText(part.share, words));
        table.rows.push_back(std::move(row));
    }
    flow.table(table);
    if (hasRanges)
        flow.paragraph(words("estimate"), TextStyle::small);
}

void addIfAny(std::vector<std::string>& sentences, const std::string& sentence) {
    if (!sentence.empty())
        sentences.push_back(sentence);
}

}  // namespace

bool hasComposition(const RecipeFacts& facts) {
    if (!canBeWeighed(facts) || facts.ink.unrecorded.high > 0)
        return true;
    const auto isReplaced = [](const LotService& service) {
        return service.answer == LotAnswer::replaced;
    };
    const auto isARange = [](const InkPart& part) {
        return !printsAsOne(part.share, shareDecimals);
    };
    const std::vector<LotService>& services = facts.weighing->services;
    return std::any_of(services.begin(), services.end(), isReplaced) ||
           std::any_of(facts.ink.parts.begin(), facts.ink.parts.end(), isARange);
}

void addOutcome(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    const WeighingPlan& plan = facts.weighing->plan;
    SheetTable table;
    table.columns = {{words("outcome.lot"), Alignment::left, 2.1, 0},
                     {words("composition.pigments"), Alignment::left, 1, 0},
                     {words("outcome.recipe"), Alignment::decimal, 0, 16},
                     {words("outcome.weighed"), Alignment::decimal, 0, 17},
                     {words("outcome.off"), Alignment::decimal, 0, 18},
                     {words("outcome.uncertainty"), Alignment::decimal, 0, 23}};
    for (const PlannedShare& share : plan.lots)
        addShare(table, lotText(facts, share.lot),
                 pigmentsText(facts.lots[static_cast<std::size_t>(share.lot)], words), share,
                 words);
    if (plan.colour.recipe > 0) {
        addShare(table, words("outcome.allColour"), {}, plan.colour, words);
        table.rows.back().ruleAbove = true;
    }
    for (std::size_t i = 0; i + 1 < table.rows.size(); ++i)
        table.rows[i].keepsWithNext = true;
    flow.table(table);
    if (!hasComposition(facts)) {
        std::vector<std::string> origin = {asOfWhat(facts, words)};
        addIfAny(origin, metalsText(facts.ink, words));
        flow.paragraph(words.sentences(origin), TextStyle::small);
    }
    std::vector<std::string> notes = {
        words.filled("outcome.note", {{"limit", limitText(*facts.weighing, words)}})};
    addIfAny(notes, drierText(facts, words));
    if (facts.weighing->plans.plans.size() > 1)
        notes.push_back(words("outcome.otherWays"));
    flow.paragraph(words.sentences(notes), TextStyle::small);
}

void addComposition(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    if (facts.ink.parts.empty()) {
        flow.paragraph(words("composition.nothing"));
    } else {
        flow.paragraph(asOfWhat(facts, words), TextStyle::small);
        addParts(flow, facts.ink, words);
    }
    std::vector<std::string> notes;
    addIfAny(notes, metalsText(facts.ink, words));
    if (facts.ink.unrecorded.high > 0 && !facts.ink.parts.empty())
        notes.push_back(facts.ink.unrecorded.high >= 1
                            ? words("composition.unrecordedAll")
                            : words.filled("composition.unrecorded",
                                           {{"share", words.percent(facts.ink.unrecorded.high,
                                                                    shareDecimals)}}));
    if (!facts.weighing && facts.layer && facts.layer->extenderShare)
        notes.push_back(words.filled("composition.remembered",
                                     {{"share", words.percent(*facts.layer->extenderShare, 0)}}));
    if (!notes.empty())
        flow.paragraph(words.sentences(notes), TextStyle::small);
}

}  // namespace rackbook::recipeparts
