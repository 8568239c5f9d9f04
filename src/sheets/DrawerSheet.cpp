#include "sheets/DrawerSheet.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/ReadinessGroups.h"
#include "sheets/RuleSource.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"
#include "sheets/SpanText.h"

namespace rackbook {

namespace {

std::string countText(std::size_t count, const SheetWords& words) {
    return count == 0 ? words("none") : words.count(static_cast<std::int64_t>(count));
}

template <class P>
std::size_t countIf(const DrawerFacts& facts, P&& holds) {
    return static_cast<std::size_t>(std::count_if(facts.prints.begin(), facts.prints.end(), holds));
}

// "2026-03-01", "by 1999-12-31", "1998".
std::string sinceText(const TimeSpan& span, const SheetWords& words) {
    const bool isOpenBelow = span.earliest <= beginningOfTime;
    const bool isOpenAbove = span.latest >= endOfTime;
    if (isOpenBelow && isOpenAbove)
        return words("notKnown");
    if (isOpenBelow)
        return words.filled("contents.by", {{"date", formatDay(span.latest)}});
    if (isOpenAbove)
        return words.filled("contents.from", {{"date", formatDay(span.earliest)}});
    return spanText(span);
}

// "EEL 3, 7–9; BRK 2"
std::string namesText(const std::vector<DrawerName>& names, const DrawerFacts& facts,
                      const SheetWords& words) {
    std::map<std::size_t, std::vector<int>> numbers;
    for (const DrawerName& name : names)
        numbers[name.edition].push_back(name.workingNumber);
    std::vector<std::string> texts;
    for (auto& [edition, some] : numbers) {
        std::sort(some.begin(), some.end());
        texts.push_back(facts.editions[edition].code + " " + numberRanges(some));
    }
    return words.apart(texts);
}

void addSummary(Flow& flow, const DrawerFacts& facts, const SheetWords& words) {
    const std::size_t lying = facts.prints.size();
    std::string fill = countText(lying, words);
    if (facts.capacity) {
        const char* key =
            lying > static_cast<std::size_t>(*facts.capacity) ? "summary.over" : "summary.lyingOf";
        fill = words.filled(key, {{"count", words.count(static_cast<std::int64_t>(lying))},
                                  {"capacity", words.count(*facts.capacity)}});
    }
    std::size_t soft = 0;
    for (const DrawerSoft& group : facts.soft)
        soft += group.prints.size();
    const auto needsLight = [](const DrawerPrint& print) { return print.mayNeedLight; };
    const auto isDue = [](const DrawerPrint& print) { return print.isAiringDue; };
    flow.labelValues({{words("summary.lying"), fill},
                      {words("summary.needLight"), countText(countIf(facts, needsLight), words)},
                      {words("summary.due"), countText(countIf(facts, isDue), words)},
                      {words("summary.soft"), countText(soft, words)}});
}

std::string airingText(const DrawerPrint& print, const SheetWords& words) {
    if (!print.airing_day)
        return words("comeOut.now");
    const std::string day = formatDay(*print.airing_day * minutesPerDay);
    return print.isAiringDue ? words.filled("comeOut.dueOn", {{"date", day}}) : day;
}

struct ComeOutLine {
    const DrawerPrint* sample = nullptr;
    std::vector<int> numbers;
    std::vector<std::string> designations;
};

// Prints of a verdict that have been in the dark alike, those that have been longest first.
using ComeOutKey = std::tuple<CivilMinute, CivilMinute, std::size_t>;

std::map<ComeOutKey, ComeOutLine> comeOutLines(const DrawerFacts& facts, Verdict verdict) {
    std::map<ComeOutKey, ComeOutLine> lines;
    for (const DrawerPrint& print : facts.prints) {
        if (!print.mayNeedLight || print.verdict != verdict)
            continue;
        ComeOutLine& line =
            lines[{dayOf(print.darkSince.earliest), dayOf(print.darkSince.latest), print.edition}];
        line.sample = &print;
        line.numbers.push_back(print.workingNumber);
        if (!print.designation.empty())
            line.designations.push_back(print.designation);
    }
    return lines;
}

void addComeOut(Flow& flow, const DrawerFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("comeOut.impressions"), Alignment::left, 1, 0},
                     {words("comeOut.designation"), Alignment::left, 1.4, 0},
                     {words("comeOut.darkSince"), Alignment::left, 0, 30},
                     {words("comeOut.airing"), Alignment::left, 0, 34}};
    for (const Verdict verdict : verdictsByUrgency()) {
        const std::map<ComeOutKey, ComeOutLine> lines = comeOutLines(facts, verdict);
        if (lines.empty())
            continue;
        TableRow heading{{words.of("comeOut", verdict)}};
        heading.heading = true;
        table.rows.push_back(std::move(heading));
        for (const auto& [key, line] : lines)
            table.rows.push_back(
                {{facts.editions[line.sample->edition].code + " " + numberRanges(line.numbers),
                  line.designations.empty() ? words("contents.unsigned")
                                            : words.inRow(line.designations),
                  sinceText(line.sample->darkSince, words), airingText(*line.sample, words)}});
    }
    if (table.rows.empty()) {
        flow.paragraph(words("comeOut.nothing"));
        return;
    }
    flow.table(table);
    flow.paragraph(
        words.filled(
            "comeOut.note",
            {{"days", words.withUnit("days", words.shortFigure(facts.airing_days))},
             {"origin", sourceText("airing_days", facts.airingOrigin, facts.airingSource, words)}}),
        TextStyle::small);
}

std::string verdictText(const DrawerPrint& print, const SheetWords& words) {
    const std::string verdict = print.verdict ? words.of("verdict", *print.verdict)
                                              : words.of("impressionFate", ImpressionFate::spoiled);
    return print.perhapsElsewhere ? words.filled("contents.perhaps", {{"verdict", verdict}})
                                  : verdict;
}

std::string touchText(const DrawerPrint& print, const SheetWords& words) {
    const std::string then =
        print.touchThen ? words.of("touch", *print.touchThen) : words("contents.noLook");
    return print.foundDryOn
               ? words.filled("contents.drySince",
                              {{"touch", then}, {"date", sinceText(*print.foundDryOn, words)}})
               : then;
}

void addContents(Flow& flow, const DrawerFacts& facts, const SheetWords& words) {
    if (facts.prints.empty()) {
        flow.paragraph(words("contents.nothing"));
        return;
    }
    SheetTable table;
    table.columns = {{words("contents.designation"), Alignment::left, 1, 0},
                     {words("contents.working"), Alignment::right, 0, 17},
                     {words("contents.since"), Alignment::left, 0, 28},
                     {words("contents.interleaved"), Alignment::left, 0, 22},
                     {words("contents.touch"), Alignment::left, 1, 0},
                     {words("contents.verdict"), Alignment::left, 1, 0}};
    std::optional<std::size_t> edition;
    for (const DrawerPrint& print : facts.prints) {
        if (edition != print.edition) {
            edition = print.edition;
            const DrawerEdition& of = facts.editions[print.edition];
            TableRow heading{
                {words.filled("contents.edition", {{"title", of.title}, {"code", of.code}})}};
            heading.heading = true;
            table.rows.push_back(std::move(heading));
        }
        table.rows.push_back(
            {{print.designation.empty() ? words("contents.unsigned") : print.designation,
              std::to_string(print.workingNumber), sinceText(print.since, words),
              words(print.isInterleaved ? "contents.yes" : "contents.no"), touchText(print, words),
              verdictText(print, words)}});
    }
    flow.table(table);
}

// Those that lie bare, then those under interleaving.
std::string neighboursText(const std::vector<DrawerName>& names, const DrawerFacts& facts,
                           const SheetWords& words) {
    std::vector<DrawerName> bare;
    std::vector<DrawerName> interleaved;
    for (const DrawerName& name : names)
        (name.isInterleaved ? interleaved : bare).push_back(name);
    std::string text = bare.empty() ? "" : namesText(bare, facts, words);
    if (!interleaved.empty())
        text +=
            (text.empty() ? "" : "\n") +
            words.filled("beside.interleaved", {{"prints", namesText(interleaved, facts, words)}});
    return text.empty() ? words("none") : text;
}

void addBeside(Flow& flow, const DrawerFacts& facts, const SheetWords& words) {
    if (facts.soft.empty()) {
        flow.paragraph(words("beside.nothing"));
        return;
    }
    SheetTable table;
    table.columns = {{words("beside.prints"), Alignment::left, 1, 0},
                     {words("beside.putThere"), Alignment::left, 0, 26},
                     {words("beside.felt"), Alignment::left, 0, 26},
                     {words("beside.then"), Alignment::left, 1.2, 0},
                     {words("beside.since"), Alignment::left, 1.2, 0}};
    for (const DrawerSoft& soft : facts.soft) {
        const std::string felt =
            soft.touch ? words.of("touch", *soft.touch) + "\n" + sinceText(soft.touchOn, words)
                       : words("contents.noLook");
        const std::string own = namesText(soft.prints, facts, words);
        table.rows.push_back(
            {{soft.isInterleaved ? words.filled("beside.interleaved", {{"prints", own}}) : own,
              sinceText(soft.putThere, words), felt, neighboursText(soft.besideThen, facts, words),
              neighboursText(soft.comeSince, facts, words)}});
    }
    flow.table(table);
    flow.paragraph(words("beside.note"), TextStyle::small);
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const DrawerFacts& facts, const SheetWords& words);
    bool isOfEmptyToo;
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {{"summary", addSummary, true},
                                                  {"comeOut", addComeOut, false},
                                                  {"contents", addContents, true},
                                                  {"beside", addBeside, false}};
    return sections;
}

FlowSetup setupOf(const DrawerFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    const std::string day = words.day(facts.asOf);
    setup.runningTitle = facts.name + " · " + day;
    setup.info.title = facts.name + " · " + day;
    setup.info.subject = words("sheet");
    return setup;
}

}  // namespace

TemplateRules drawerSheetRules() {
    TemplateRules rules;
    rules.sheet = "drawer";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer");
    add("summary", "lying lyingOf over needLight due soft");
    add("comeOut", "impressions designation darkSince airing dueOn now nothing note");
    for (const Verdict verdict :
         {Verdict::bringOut, Verdict::moreLight, Verdict::lookDue, Verdict::unknown})
        rules.labels.push_back(std::string("comeOut.") + textOf(verdict));
    add("contents",
        "edition designation working since interleaved touch verdict unsigned yes no noLook "
        "drySince perhaps by from nothing");
    add("beside", "prints putThere felt then since interleaved nothing note");
    return rules;
}

PageModel drawerSheet(const DrawerFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(facts.name, words.filled("subtitle", {{"date", words.day(facts.asOf)}}));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name || (facts.prints.empty() && !section.isOfEmptyToo))
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
