#include "sheets/BenchSheet.h"

#include <algorithm>

#include "sheets/BenchFields.h"
#include "sheets/BenchForm.h"
#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

// A pencil wants room.
constexpr double boxHeight_mm = 9;
constexpr double rowHeight_mm = 8;
constexpr double lineStep_mm = 9;
constexpr int noteLines = 12;

std::string layerName(const BenchFacts& facts, const SheetWords& words) {
    return words.filled("layer.name", {{"layer", std::to_string(facts.layer.ordinal)}});
}

void addLayer(Flow& flow, const BenchFacts& facts, const SheetWords& words) {
    const auto known = [&](const std::string& text) {
        return text.empty() ? words("notRecorded") : text;
    };
    std::string state = words("notRecorded");
    if (facts.layer.blockState && facts.stateWords.empty())
        state = std::to_string(*facts.layer.blockState);
    else if (facts.layer.blockState)
        state = words.labelled(std::to_string(*facts.layer.blockState), facts.stateWords);
    flow.labelValues(
        {{words("layer.edition"),
          words.filled("layer.editionOf", {{"title", facts.title}, {"code", facts.code}})},
         {words("layer.ordinal"),
          words.filled("layer.ordinalOf",
                       {{"layer", std::to_string(facts.layer.ordinal)},
                        {"layers", words.count(static_cast<std::int64_t>(facts.layers))}})},
         {words("layer.colour"), known(facts.layer.colourWords)},
         {words("layer.block"), known(facts.block)},
         {words("layer.state"), state},
         {words("layer.mix"), known(facts.mix)},
         {words("layer.film"),
          facts.layer.filmWeight_gm2
              ? words.withUnit("gm2", words.shortFigure(*facts.layer.filmWeight_gm2))
              : words("notRecorded")}});
}

void addBoxes(Flow& flow, const std::vector<BenchField>& row, const SheetWords& words) {
    std::vector<FieldBox> boxes;
    for (const BenchField& field : row)
        boxes.push_back({field.name, words(field.label), field.share});
    flow.fillIn(boxes, boxHeight_mm);
}

void addRun(Flow& flow, const BenchFacts&, const SheetWords& words) {
    for (const std::vector<BenchField>& row : benchRows("run"))
        addBoxes(flow, row, words);
}

// A portion is let down from the layer's mix: where none is recorded, nothing could be made of
// what stands in its boxes.
void addInk(Flow& flow, const BenchFacts& facts, const SheetWords& words) {
    for (std::vector<BenchField> row : benchRows("ink")) {
        if (facts.mix.empty())
            row.erase(std::remove_if(row.begin(), row.end(), isOfPortion), row.end());
        addBoxes(flow, row, words);
    }
    if (facts.mix.empty())
        flow.paragraph(words("ink.noMix"), TextStyle::small);
    flow.note(NoteKind::caution, words("caution"), words("caution.driers"));
}

// Two impressions a row, the first half left and the second half right; where they have
// designations one a row, so that there is room for a remark.
class ImpressionRows {
public:
    ImpressionRows(const BenchFacts& facts, const SheetWords& words)
        : m_fields(benchRows("impressions").front()),
          m_code(facts.code),
          m_withDesignations(
              std::any_of(facts.impressions.begin(), facts.impressions.end(),
                          [](const BenchImpression& one) { return !one.designation.empty(); })) {
        m_table.rowHeight_mm = rowHeight_mm;
        const std::size_t lists = m_withDesignations ? 1 : 2;
        for (std::size_t list = 0; list < lists; ++list)
            addColumns(list == 0 ? 0 : betweenLists_mm, words);
        if (facts.impressions.size() > 1)
            addRowForAll(words);
        const std::size_t rows = (facts.impressions.size() + lists - 1) / lists;
        for (std::size_t row = 0; row < rows; ++row) {
            std::vector<FieldCell> cells;
            for (std::size_t at = row; at < facts.impressions.size(); at += rows)
                addCells(cells, facts.impressions[at]);
            cells.resize(m_table.columns.size());
            m_table.rows.push_back(std::move(cells));
        }
    }

    const FieldTable& table() const { return m_table; }

private:
    using Shape = FieldColumn::Shape;

    static constexpr double betweenLists_mm = 5;

    void addColumns(double before_mm, const SheetWords& words) {
        constexpr double number_mm = 15;
        constexpr double designation_mm = 24;
        constexpr double tick_mm = 16;
        m_table.columns.push_back(
            {words("impressions.number"), Shape::text, 0, number_mm, before_mm});
        if (m_withDesignations)
            m_table.columns.push_back(
                {words("impressions.designation"), Shape::text, 0, designation_mm, 0});
        for (const BenchField& field : m_fields) {
            const bool isTick = field.kind == FieldKind::tick;
            m_table.columns.push_back({words(field.label), isTick ? Shape::tick : Shape::line,
                                       field.share, isTick ? tick_mm : 0, 0});
        }
    }

    // One tick for a run on every sheet.
    void addRowForAll(const SheetWords& words) {
        std::vector<FieldCell> cells(m_table.columns.size());
        cells.front() = words("impressions.every");
        for (std::size_t i = 0; i < m_table.columns.size(); ++i)
            if (m_table.columns[i].shape == Shape::tick) {
                cells[i] = everyPrinted;
                break;
            }
        m_table.rows.push_back(std::move(cells));
    }

    void addCells(std::vector<FieldCell>& cells, const BenchImpression& impression) const {
        cells.emplace_back(std::to_string(impression.workingNumber));
        if (m_withDesignations)
            cells.emplace_back(impression.designation);
        for (const BenchField& field : m_fields)
            cells.emplace_back(benchFieldName(field, m_code, impression.workingNumber));
    }

    std::vector<BenchField> m_fields;
    std::string m_code;
    bool m_withDesignations;
    FieldTable m_table;
};

void addTable(Flow& flow, const BenchFacts& facts, const SheetWords& words) {
    if (facts.impressions.size() > 1)
        flow.paragraph(
            words.filled("impressions.everyMeans", {{"every", words("impressions.every")}}),
            TextStyle::small);
    flow.fillInRows(ImpressionRows(facts, words).table());
}

void addImpressions(Flow& flow, const BenchFacts& facts, const SheetWords& words) {
    if (!facts.impressions.empty())
        addTable(flow, facts, words);
    else
        flow.paragraph(words(facts.printed.empty() ? "impressions.none" : "impressions.all"));
    if (!facts.printed.empty())
        flow.paragraph(
            words.filled("impressions.already", {{"numbers", numberRanges(facts.printed)}}),
            TextStyle::small);
    if (!facts.missed.empty())
        flow.paragraph(
            words.filled("impressions.missed", {{"layer", std::to_string(facts.layerBefore)},
                                                {"numbers", numberRanges(facts.missed)}}),
            TextStyle::small);
}

void addNotes(Flow& flow, const BenchFacts&, const SheetWords& words) {
    const std::vector<std::vector<BenchField>> rows = benchRows("notes");
    addBoxes(flow, rows[0], words);
    for (const BenchField& field : rows[1])
        flow.fillInLines(field.name, words(field.label), noteLines, lineStep_mm);
    flow.paragraph(words.filled("notes.handBack", {{"command", "rackbook take-sheet"}}),
                   TextStyle::small);
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const BenchFacts& facts, const SheetWords& words);
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {{"layer", addLayer},
                                                  {"run", addRun},
                                                  {"ink", addInk},
                                                  {"impressions", addImpressions},
                                                  {"notes", addNotes}};
    return sections;
}

FlowSetup setupOf(const BenchFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    setup.runningTitle = facts.code + " · " + layerName(facts, words);
    setup.info.title = facts.title + " (" + facts.code + "), " + layerName(facts, words);
    setup.info.subject = words("sheet");
    return setup;
}

}  // namespace

TemplateRules benchSheetRules() {
    TemplateRules rules;
    rules.sheet = "bench";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer");
    add("layer", "name edition editionOf ordinal ordinalOf colour block state mix film");
    add("impressions", "number designation every everyMeans none all already missed");
    add("ink", "noMix");
    add("notes", "handBack");
    add("form", "date time number impression every");
    for (const BenchField& field : benchFields())
        rules.labels.push_back(field.label);
    return rules;
}

BenchSheet benchSheet(const BenchFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(words("sheet"), words.filled("subtitle", {{"title", facts.title},
                                                         {"layer", layerName(facts, words)}}));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name)
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    BenchSheet sheet;
    sheet.model = flow.finish();
    sheet.fields = flow.fieldPlaces();
    sheet.model.form = benchForm(facts, sheet.fields,
                                 {words, measurer, sheetTemplate.flowSetup().baseSize_pt,
                                  "sheet \"" + sheet.model.info.title + "\""});
    return sheet;
}

}  // namespace rackbook
