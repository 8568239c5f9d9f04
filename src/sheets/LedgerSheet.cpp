#include "sheets/LedgerSheet.h"

#include <array>
#include <map>

#include "sheets/DateColumn.h"
#include "sheets/DesignationNotes.h"
#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

// In existence, spoiled, destroyed, in the order of the enumerators.
using FateCounts = std::array<int, 3>;

void count(FateCounts& counts, ImpressionFate fate) {
    ++counts[static_cast<std::size_t>(fate)];
}

TableRow countsRow(const std::string& name, const FateCounts& counts, const SheetWords& words) {
    TableRow row{{name}};
    int together = 0;
    for (const int of : counts) {
        row.cells.emplace_back(of == 0 ? "–" : words.count(of));
        together += of;
    }
    row.cells.emplace_back(words.count(together));
    return row;
}

void addTotals(Flow& flow, const LedgerEdition& edition, const SheetWords& words) {
    std::map<DesignationKind, FateCounts> ofKind;
    FateCounts withoutKind = {};
    FateCounts notSigned = {};
    FateCounts all = {};
    for (const LedgerRow& row : edition.rows) {
        const Impression& one = row.impression;
        count(!one.designation       ? notSigned
              : !one.designationKind ? withoutKind
                                     : ofKind[*one.designationKind],
              one.fate);
        count(all, one.fate);
    }
    SheetTable table;
    table.columns = {{words("totals.kind"), Alignment::left, 1, 0}};
    for (const ImpressionFate fate :
         {ImpressionFate::kept, ImpressionFate::spoiled, ImpressionFate::destroyed})
        table.columns.push_back(
            {asHeading(words.of("impressionFate", fate)), Alignment::right, 0, 25});
    table.columns.push_back({asHeading(words("totals.all")), Alignment::right, 0, 25});
    for (const auto& [kind, counts] : ofKind)
        table.rows.push_back(countsRow(words.of("designation", kind), counts, words));
    if (withoutKind != FateCounts{})
        table.rows.push_back(countsRow(words("totals.withoutKind"), withoutKind, words));
    if (notSigned != FateCounts{})
        table.rows.push_back(countsRow(words("totals.notSigned"), notSigned, words));
    for (TableRow& row : table.rows)
        row.keepsWithNext = true;
    table.rows.push_back(countsRow(words("totals.together"), all, words));
    table.rows.back().strong = table.rows.back().ruleAbove = true;
    flow.table(table);
    std::vector<const Impression*> impressions;
    for (const LedgerRow& row : edition.rows)
        impressions.push_back(&row.impression);
    addDesignationNotes(flow, edition.edition, impressions, words);
}

std::string fateText(const Impression& impression, const SheetWords& words) {
    const std::string& fate = words.of("impressionFate", impression.fate);
    if (impression.fate == ImpressionFate::kept)
        return fate;
    return words.inRow({fate, words.tableDateOrNotRecorded(impression.fateOn)});
}

std::string whereText(const LedgerRow& row, const SheetWords& words) {
    const bool isKept = row.impression.fate == ImpressionFate::kept;
    const std::string where = !row.where.empty() ? row.where
                              : isKept           ? words("notKnown")
                                                 : std::string("–");
    if (!row.handedOver)
        return where;
    const ProvenanceStep& step = *row.handedOver;
    const bool comesBack = step.why == MoveWhy::consign || step.why == MoveWhy::lend;
    const std::string key = std::string("impressions.handedOver.") + textOf(step.why);
    return where + "\n" +
           (comesBack && step.dueOn
                ? words.filled(key + "Until", {{"date", words.tableDate(*step.dueOn)}})
                : words.filled(key, {{"date", words.tableDate(step.on)}}));
}

TableRow impressionRow(const LedgerRow& row, const SheetWords& words) {
    const Impression& one = row.impression;
    TableRow made{{std::to_string(one.workingNumber)}};
    made.cells.emplace_back(one.designation.value_or("–"));
    made.cells.emplace_back(one.designation ? words.tableDateOrNotRecorded(one.signedOn) : "–");
    made.cells.emplace_back(fateText(one, words));
    made.cells.emplace_back(whereText(row, words));
    made.cells.emplace_back(row.verdict ? words.of("verdict", *row.verdict) : "–");
    return made;
}

constexpr std::size_t signedOnColumn = 2;

void addImpressions(Flow& flow, const LedgerEdition& edition, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("impressions.working"), Alignment::right, 0, 15.5},
                     {words("impressions.designation"), Alignment::left, 0, 17.5},
                     {words("impressions.signedOn"), Alignment::left, 0, 0},
                     {words("impressions.fate"), Alignment::left, 0, 33},
                     {words("impressions.where"), Alignment::left, 1, 0},
                     {words("impressions.readiness"), Alignment::left, 0, 25}};
    for (const LedgerRow& row : edition.rows)
        table.rows.push_back(impressionRow(row, words));
    table.columns[signedOnColumn].fixed_mm = dateWidth_mm(table, signedOnColumn);
    flow.table(table);
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const LedgerEdition& edition, const SheetWords& words);
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {{"totals", addTotals},
                                                  {"impressions", addImpressions}};
    return sections;
}

void addEdition(Flow& flow, const LedgerEdition& edition, const SheetTemplate& sheetTemplate,
                const SheetWords& words) {
    flow.heading(1, edition.title + " (" + edition.code + ")");
    if (edition.rows.empty()) {
        flow.paragraph(words("impressions.nothing"));
        return;
    }
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name)
                continue;
            flow.heading(2, words(name));
            section.add(flow, edition, words);
        }
}

FlowSetup setupOf(const LedgerFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    const std::string day = words.day(facts.asOf);
    const bool isOfOne = facts.editions.size() == 1;
    const std::string name =
        words("sheet") + (isOfOne ? " " + facts.editions.front().code : std::string());
    setup.runningTitle = name + " · " + day;
    setup.info.title = name + " " + day;
    return setup;
}

}  // namespace

TemplateRules ledgerSheetRules() {
    TemplateRules rules;
    rules.sheet = "ledger";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer atGallery atHolder");
    add("totals", "kind all together withoutKind notSigned");
    add("impressions.handedOver", "sell give consign consignUntil lend lendUntil");
    add("impressions", "working designation signedOn fate where readiness nothing");
    return rules;
}

PageModel ledgerSheet(const LedgerFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(words("sheet"), words.filled("subtitle", {{"date", words.day(facts.asOf)}}));
    if (facts.editions.empty())
        flow.paragraph(words("impressions.nothing"));
    for (const LedgerEdition& edition : facts.editions)
        addEdition(flow, edition, sheetTemplate, words);
    return flow.finish();
}

}  // namespace rackbook
