#include <algorithm>
#include <cmath>
#include <set>

#include "base/Numbers.h"
#include "sheets/EditionParts.h"
#include "sheets/ReadingText.h"
#include "sheets/ShareText.h"

namespace rackbook::editionparts {

namespace {

bool hasLab(const std::optional<Reading>& reading) {
    return reading && reading->labL && reading->labA && reading->labB;
}

LabColour labIn(const Reading& reading) {
    return {*reading.labL, *reading.labA, *reading.labB};
}

// A swatch is drawn under D50 and the 2° observer; values under others would show another colour.
bool isDrawn(const std::optional<Reading>& reading) {
    return hasLab(reading) && reading->illuminant == Illuminant::D50 &&
           reading->observer == Observer::deg2 && canBeDrawn(labIn(*reading));
}

std::string blockText(const EditionFacts& facts, const LayerFacts& layer, const SheetWords& words) {
    const std::string state =
        layer.layer.blockState ? std::to_string(*layer.layer.blockState) : std::string();
    if (!layer.block)
        return state.empty() ? words("notRecorded")
                             : words.filled("layers.stateOnly", {{"state", state}});
    if (state.empty())
        return layer.block->name;
    return facts.blocks.size() == 1
               ? words.filled("layers.stateOnly", {{"state", state}})
               : words.filled("layers.stateOf", {{"block", layer.block->name}, {"state", state}});
}

std::string filmText(const Estimate& film_gm2, const SheetWords& words) {
    if (!film_gm2.isKnown())
        return {};
    return words.figure(film_gm2.best, 1) + " (" + words.figure(film_gm2.low, 1) + "–" +
           words.figure(film_gm2.high, 1) + ")";
}

// Which columns the sequence has: those that no layer fills are left out.
struct Columns {
    explicit Columns(const EditionFacts& facts) {
        for (const LayerFacts& layer : facts.layers) {
            reading = reading || isDrawn(layer.reading);
            coverage = coverage || layer.layer.coverage;
            filmAimed = filmAimed || layer.layer.filmWeight_gm2;
            filmLaid = filmLaid || layer.filmLaid_gm2.isKnown();
        }
    }
    bool reading = false;
    bool coverage = false;
    bool filmAimed = false;
    bool filmLaid = false;
};

TableRow sequenceRow(const EditionFacts& facts, const LayerFacts& layer, const Columns& columns,
                     const SheetWords& words) {
    const std::string& missing = words("notRecorded");
    std::vector<TableCell> cells = {std::to_string(layer.layer.ordinal)};
    if (columns.reading) {
        cells.emplace_back();
        if (isDrawn(layer.reading))
            cells.back() = TableCell(labIn(*layer.reading), "");
    }
    std::string colour = layer.layer.colourWords;
    if (hasLab(layer.reading))
        colour += "\n" + labText(labIn(*layer.reading), words);
    cells.emplace_back(colour);
    cells.emplace_back(blockText(facts, layer, words));
    if (columns.coverage)
        cells.emplace_back(layer.layer.coverage ? words.percent(*layer.layer.coverage, 0)
                                                : missing);
    if (columns.filmAimed)
        cells.emplace_back(layer.layer.filmWeight_gm2 ? words.figure(*layer.layer.filmWeight_gm2, 1)
                                                      : missing);
    if (columns.filmLaid)
        cells.emplace_back(layer.filmLaid_gm2.isKnown() ? filmText(layer.filmLaid_gm2, words)
                                                        : missing);
    return {std::move(cells)};
}

void addSequence(Flow& flow, const EditionFacts& facts, const Columns& columns,
                 const SheetWords& words) {
    SheetTable table;
    table.columns.push_back({words("layers.ordinal"), Alignment::right, 0, 12.5});
    if (columns.reading)
        table.columns.push_back({words("layers.reading"), Alignment::left, 0, 14});
    table.columns.push_back({words("layers.colour"), Alignment::left, 1.5, 0});
    table.columns.push_back(
        {words("layers.block"), Alignment::left, facts.blocks.size() == 1 ? 0.6 : 1.0, 0});
    if (columns.coverage)
        table.columns.push_back({words("layers.coverage"), Alignment::right, 0, 16});
    if (columns.filmAimed)
        table.columns.push_back({words("layers.filmAimed"), Alignment::right, 0, 15});
    if (columns.filmLaid)
        table.columns.push_back({words("layers.filmLaid"), Alignment::right, 0, 24});
    for (const LayerFacts& layer : facts.layers)
        table.rows.push_back(sequenceRow(facts, layer, columns, words));
    flow.table(table);
}

void addRuns(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("layers.ordinal"), Alignment::right, 0, 12.5},
                     {words("layers.printedOn"), Alignment::left, 0.95, 0},
                     {words("layers.portion"), Alignment::left, 1.1, 0},
                     {words("layers.sheets"), Alignment::right, 0, 12},
                     {words("layers.numbers"), Alignment::left, 1.25, 0},
                     {words("layers.spoiled"), Alignment::right, 0, 14},
                     {words("layers.extender"), Alignment::right, 0, 23},
                     {words("layers.drier"), Alignment::right, 0, 21}};
    for (const LayerFacts& layer : facts.layers) {
        std::string ordinal = std::to_string(layer.layer.ordinal);
        if (layer.pulls.empty())
            table.rows.push_back({{ordinal, words("layers.notPrinted"), "", "", "", "", "", ""}});
        for (const PullFacts& pull : layer.pulls) {
            table.rows.push_back({{ordinal, words.tableDate(pull.start),
                                   pull.portion.empty() ? words("notRecorded") : pull.portion,
                                   words.count(pull.sheets), numberRanges(pull.workingNumbers),
                                   words.count(pull.spoiled),
                                   extenderText(pull.extenderShare, pull.isRemembered, words),
                                   shareText(pull.drierShare, 2, words)}});
            ordinal.clear();
        }
    }
    flow.heading(2, words("layers.runs"));
    flow.table(table);
}

void addNotes(Flow& flow, const EditionFacts& facts, const Columns& columns,
              const SheetWords& words) {
    std::set<std::string> conditions;
    bool undrawn = false;
    for (const LayerFacts& layer : facts.layers)
        if (hasLab(layer.reading)) {
            conditions.insert(conditionsText(*layer.reading, words));
            undrawn = undrawn || !isDrawn(layer.reading);
        }
    const std::string all = words.apart({conditions.begin(), conditions.end()});
    if (!all.empty()) {
        std::vector<std::string> sentences = {
            words.filled("layers.readingNote", {{"conditions", all}})};
        if (undrawn)
            sentences.push_back(words("layers.readingOther"));
        flow.paragraph(words.sentences(sentences), TextStyle::small);
    }
    if (columns.filmLaid)
        flow.paragraph(
            words.filled("layers.filmNote", {{"mass", words.shortFigure(facts.knifeTolerance_g)}}),
            TextStyle::small);
}

bool anyRange(const EditionFacts& facts) {
    for (const LayerFacts& layer : facts.layers)
        for (const PullFacts& pull : layer.pulls)
            if (showsEstimates(pull.extenderShare, pull.isRemembered, pull.drierShare))
                return true;
    return false;
}

}  // namespace

void addLayers(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    if (facts.layers.empty()) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    const Columns columns(facts);
    addSequence(flow, facts, columns, words);
    addNotes(flow, facts, columns, words);
    addRuns(flow, facts, words);
    if (anyRange(facts))
        flow.paragraph(words("layers.shareNote"), TextStyle::small);
}

}  // namespace rackbook::editionparts
