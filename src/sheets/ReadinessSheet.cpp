#include "sheets/ReadinessSheet.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Numbers.h"
#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/ReadinessDoses.h"
#include "sheets/ReadinessGroups.h"
#include "sheets/ReadinessWhy.h"
#include "sheets/RuleSource.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

struct Content {
    const ReadinessFacts& facts;
    const std::vector<ReadinessGroup>& groups;
    const SheetWords& words;

    const ReadinessRow& row(const ReadinessGroup& group) const {
        return facts.readiness.rows[group.sample];
    }
};

std::string verdictText(const Content& content, Verdict verdict) {
    return content.words.of("verdict", verdict);
}

void addSummary(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    std::map<std::size_t, std::map<Verdict, int>> counts;
    for (const ReadinessRow& row : content.facts.readiness.rows)
        ++counts[content.facts.impressions[static_cast<std::size_t>(row.impression)].edition]
                [row.verdict];
    SheetTable table;
    table.columns = {{words("summary.edition"), Alignment::left, 1, 0}};
    for (const Verdict verdict : verdictsByUrgency())
        table.columns.push_back(
            {asHeading(verdictText(content, verdict)), Alignment::right, 0, 14});
    table.columns.push_back({asHeading(words("summary.together")), Alignment::right, 0, 12});
    std::map<Verdict, int> all;
    const auto add = [&](const std::string& name, std::map<Verdict, int>& of, bool total) {
        TableRow row{{name}};
        int sum = 0;
        for (const Verdict verdict : verdictsByUrgency()) {
            row.cells.emplace_back(of[verdict] == 0 ? "–" : words.count(of[verdict]));
            sum += of[verdict];
            if (!total)
                all[verdict] += of[verdict];
        }
        row.cells.emplace_back(words.count(sum));
        row.strong = row.ruleAbove = total;
        table.rows.push_back(std::move(row));
    };
    for (auto& [edition, of] : counts)
        add(content.facts.titles[edition] + " (" + content.facts.history.editions[edition].code +
                ")",
            of, false);
    if (counts.size() > 1)
        add(words("summary.all"), all, true);
    if (table.rows.empty())
        flow.paragraph(words("summary.nothing"));
    else
        flow.table(table);
    if (content.facts.readiness.leftOut > 0)
        flow.paragraph(
            words.filled("summary.leftOut", {{"count", words.count(static_cast<std::int64_t>(
                                                           content.facts.readiness.leftOut))}}),
            TextStyle::small);
}

// Days in light that are still wanted: "8", "3–5".
std::string stillWanted(const ReadinessRow& row, const SheetWords& words) {
    if (row.verdict == Verdict::unknown)
        return words("notKnown");
    if (row.daysLow >= row.daysNeeded || row.pull < 0)
        return row.verdict == Verdict::lookDue ? "0" : words("doFirst.untilTrue");
    const std::string most = words.figure(std::ceil(row.daysNeeded - row.daysLow), 0);
    const double least = std::max(0.0, std::ceil(row.daysNeeded - row.daysHigh));
    const std::string fewest = words.figure(least, 0);
    return fewest == most ? most : fewest + "–" + most;
}

void addDoFirst(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    SheetTable table;
    table.columns = {{words("doFirst.impressions"), Alignment::left, 0.9, 0},
                     {words("doFirst.designation"), Alignment::left, 1, 0},
                     {words("doFirst.place"), Alignment::left, 1.1, 0},
                     {words("doFirst.days"), Alignment::right, 0, 33}};
    for (const Verdict verdict : verdictsByUrgency()) {
        if (verdict == Verdict::ready || verdict == Verdict::notAffected)
            continue;
        bool first = true;
        for (const ReadinessGroup& group : content.groups) {
            if (content.row(group).verdict != verdict)
                continue;
            if (first) {
                TableRow heading{{words.of("doFirst", verdict)}};
                heading.heading = true;
                table.rows.push_back(std::move(heading));
                first = false;
            }
            const std::string designations = words.inRow(group.designations);
            table.rows.push_back(
                {{groupName(group), designations.empty() ? words("doFirst.unsigned") : designations,
                  group.place, stillWanted(content.row(group), words)}});
        }
    }
    if (table.rows.empty())
        flow.paragraph(words("doFirst.nothing"));
    else
        flow.table(table);
}

void addDosesOf(Flow& flow, const Content& content) {
    addDoses(flow, content.facts, content.groups, content.words);
}

void addReasons(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    SheetTable table;
    table.columns = {{words("impressions.impressions"), Alignment::left, 1, 0},
                     {words("impressions.reasons"), Alignment::left, 3.4, 0}};
    for (const ReadinessGroup& group : content.groups) {
        std::string why;
        for (const std::string& sentence : group.reasons)
            why += (why.empty() ? "" : " ") + sentence;
        table.rows.push_back(
            {{groupName(group) + "\n" + verdictText(content, content.row(group).verdict), why}});
    }
    flow.heading(2, words("impressions.why"));
    flow.table(table);
}

void addImpressions(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    if (content.groups.empty()) {
        flow.paragraph(words("none"));
        return;
    }
    SheetTable table;
    table.columns = {{words("impressions.impressions"), Alignment::left, 1, 0},
                     {words("impressions.verdict"), Alignment::left, 0, 18},
                     {words("impressions.layer"), Alignment::left, 0, 22},
                     {words("impressions.days"), Alignment::left, 0, 23},
                     {words("impressions.look"), Alignment::left, 0, 22},
                     {words("impressions.place"), Alignment::left, 1.2, 0}};
    for (const ReadinessGroup& group : content.groups)
        table.rows.push_back({{groupName(group), verdictText(content, content.row(group).verdict),
                               group.layer, group.days, group.look, group.place}});
    flow.table(table);
    addReasons(flow, content);
}

std::string ruleValue(const RuleInForce& rule, const SheetWords& words) {
    if (rule.unit == "share")
        return words.withUnit("percent", words.shortFigure(rule.value * 100));
    const std::string shown = words.shortFigure(rule.value);
    if (rule.unit == "times")
        return words.filled("rules.times", {{"value", shown}});
    const char* key = rule.unit == "sunny days" ? "rules.sunnyDays"
                      : rule.unit == "looks"    ? "rules.looks"
                                                : "unit.days";
    return words.counted(key, shown, {{"value", shown}});
}

void addRules(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    SheetTable table;
    table.columns = {{words("rules.rule"), Alignment::left, 1.6, 0},
                     {words("rules.value"), Alignment::right, 0, 18},
                     {words("rules.origin"), Alignment::left, 1, 0}};
    for (const std::string& name : rulesOfReadiness()) {
        const RuleInForce& rule = content.facts.rules.rule(name);
        table.rows.push_back(
            {{words("rules." + name), ruleValue(rule, words), sourceText(rule, words)}});
    }
    flow.table(table);
    std::vector<std::string> months;
    for (const MonthlySky& sky : content.facts.skies)
        months.push_back(
            words.filled("rules.monthSky", {{"month", words.month(sky.month)},
                                            {"sunny", words.percent(sky.sunnyShare, 0)},
                                            {"overcast", words.percent(sky.overcastShare, 0)}}));
    if (!months.empty())
        flow.paragraph(words.filled("rules.skies", {{"months", words.inRow(months)}}),
                       TextStyle::small);
    flow.paragraph(words("rules.note"), TextStyle::small);
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const Content& content);
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {{"summary", addSummary},
                                                  {"doFirst", addDoFirst},
                                                  {"doses", addDosesOf},
                                                  {"impressions", addImpressions},
                                                  {"rules", addRules}};
    return sections;
}

FlowSetup setupOf(const ReadinessFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.readiness.asOf, created);
    const std::string day = words.day(facts.readiness.asOf);
    setup.runningTitle = words("sheet") + " " + day;
    setup.info.title = words("sheet") + " " + day;
    return setup;
}

}  // namespace

TemplateRules readinessSheetRules() {
    TemplateRules rules;
    rules.sheet = "readiness";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer atGallery atHolder");
    add("summary", "edition together all leftOut nothing");
    add("doFirst", "nothing impressions designation place days unsigned untilTrue");
    addDoseLabels(rules.labels);
    add("impressions", "impressions verdict layer layerOn noLayer days daysOf look noLook place");
    add("impressions", "why reasons");
    addWhyLabels(rules.labels);
    add("rules",
        "rule value sunnyDays sunnyDays.one looks looks.one times origin note skies monthSky");
    for (const std::string& name : rulesOfReadiness())
        rules.labels.push_back("rules." + name);
    for (const Verdict verdict : verdictsByUrgency())
        if (verdict != Verdict::ready && verdict != Verdict::notAffected)
            rules.labels.push_back(std::string("doFirst.") + textOf(verdict));
    return rules;
}

PageModel readinessSheet(const ReadinessFacts& facts, const SheetTemplate& sheetTemplate,
                         const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    const std::vector<ReadinessGroup> groups = readinessGroups(facts, words);
    const Content content{facts, groups, words};
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(words("sheet"),
               words.filled("subtitle", {{"date", words.day(facts.readiness.asOf)}}));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name)
                continue;
            flow.heading(1, words(name));
            section.add(flow, content);
        }
    return flow.finish();
}

}  // namespace rackbook
