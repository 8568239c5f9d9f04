#include "sheets/StockSheet.h"

#include <algorithm>
#include <cmath>

#include "sheets/CalendarAge.h"
#include "sheets/EstimateText.h"
#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/LotText.h"
#include "sheets/RuleSource.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

constexpr int massDecimals = 1;

// Days up to two months, months up to two years, years after that; rounded down, so that nothing
// is called older than it is.
struct AgeUnit {
    const char* label;
    double days;
    int decimals;
};

AgeUnit unitFor(double days) {
    constexpr double daysInMonth = 30.44;
    constexpr double daysInYear = 365.25;
    if (days < 2 * daysInMonth)
        return {"lots.days", 1, 0};
    if (days < 2 * daysInYear - 1)
        return {"lots.months", daysInMonth, 0};
    return {"lots.years", daysInYear, 1};
}

std::string inUnit(double days, const AgeUnit& unit, const SheetWords& words) {
    constexpr double hair = 1e-6;
    const double factor = std::pow(10.0, unit.decimals);
    return words.shortFigure(std::floor(days / unit.days * factor + hair) / factor);
}

std::string timeText(double low_days, double high_days, const SheetWords& words) {
    const AgeUnit unit = unitFor(high_days);
    const std::string low = inUnit(low_days, unit, words);
    const std::string high = inUnit(high_days, unit, words);
    const std::string shown = low == high ? high : low + "–" + high;
    return words.counted(unit.label, shown, {{"value", shown}});
}

// A usual life is a round number of the studio's own; 730 days are two years.
std::string lifeText(double days, const SheetWords& words) {
    constexpr double daysInYear = 365;
    const double years = days / daysInYear;
    if (years >= 1 && std::abs(years - std::round(years)) < 0.005) {
        const std::string shown = words.shortFigure(std::round(years));
        return words.counted("lots.years", shown, {{"value", shown}});
    }
    return timeText(days, days, words);
}

std::string ageText(const Lot& lot, CivilMinute asOf, const SheetWords& words) {
    const std::int64_t to = dayOf(asOf);
    const std::int64_t latest = std::min(to, dayOf(lot.openedOn->latest()));
    const std::int64_t earliest = std::min(to, dayOf(lot.openedOn->earliest()));
    const std::int64_t most_months = wholeMonths(earliest, to);
    if (most_months < 2)
        return timeText(static_cast<double>(to - latest), static_cast<double>(to - earliest),
                        words);
    constexpr std::int64_t mostInMonths = 24;
    const bool inYears = most_months >= mostInMonths;
    const auto since = [&](std::int64_t day) {
        return inYears ? words.shortFigure(static_cast<double>(wholeTenthsOfYears(day, to)) / 10)
                       : words.count(wholeMonths(day, to));
    };
    const std::string low = since(latest);
    const std::string high = since(earliest);
    return words.filled(inYears ? "lots.years" : "lots.months",
                        {{"value", low == high ? high : low + "–" + high}});
}

std::string nameText(const Lot& lot) {
    return shortWords(lot.colourWords) + "\n" + lot.id;
}

std::string openedText(const Lot& lot, const SheetWords& words) {
    return (lot.container ? words.of("container", *lot.container) : words("notRecorded")) + "\n" +
           words.tableDateOrNotRecorded(lot.openedOn);
}

std::string placeText(const StockLine& line, const SheetWords& words) {
    if (line.isAway)
        return words("lots.away");
    return line.place.empty() ? words("notRecorded") : line.place;
}

std::string leftText(const StockLine& line, const SheetWords& words) {
    std::string text = estimateText(line.left_g, massDecimals, words);
    if (line.counted)
        text += "\n" + words.filled("lots.counted",
                                    {{"mass", words.figure(line.counted->mass_g, massDecimals)},
                                     {"date", words.tableDate(line.counted->at)}});
    return text;
}

std::string keepingText(const StockLine& line, CivilMinute asOf, const SheetWords& words) {
    const std::string usual =
        words.filled("lots.usual", {{"life", lifeText(line.usualLife_days, words)}});
    return line.lot.openedOn ? ageText(line.lot, asOf, words) + "\n" + usual : usual;
}

// Under a heading for each kind of lot.
template <class RowOf>
void addByKind(SheetTable& table, const std::vector<StockLine>& lines, const SheetWords& words,
               RowOf rowOf) {
    for (const LotKind kind : {LotKind::ink, LotKind::base, LotKind::drier, LotKind::modifier}) {
        bool isFirst = true;
        for (const StockLine& line : lines) {
            if (line.lot.lotKind != kind)
                continue;
            if (isFirst) {
                TableRow heading{{words.of("lots.kind", kind)}};
                heading.heading = true;
                table.rows.push_back(std::move(heading));
                isFirst = false;
            }
            table.rows.push_back(rowOf(line));
        }
    }
}

void addLots(Flow& flow, const StockSheetFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("lots.lot"), Alignment::left, 1.9, 0},
                     {words("lots.pigments"), Alignment::left, 0, 25},
                     {words("lots.opened"), Alignment::left, 0, 21},
                     {words("lots.age"), Alignment::left, 0, 28},
                     {words("lots.left"), Alignment::right, 0, 29},
                     {words("lots.place"), Alignment::left, 1, 0}};
    addByKind(table, facts.open, words, [&](const StockLine& line) {
        const Lot& lot = line.lot;
        return TableRow{{nameText(lot), pigmentsText(lot, words), openedText(lot, words),
                         keepingText(line, facts.asOf, words), leftText(line, words),
                         placeText(line, words)}};
    });
    if (table.rows.empty()) {
        flow.paragraph(words("lots.nothing"));
        return;
    }
    flow.table(table);
    flow.paragraph(words("lots.note"), TextStyle::small);
    if (std::any_of(facts.open.begin(), facts.open.end(),
                    [](const StockLine& line) { return needsCaution(line.lot); }))
        flow.note(NoteKind::caution, words("caution"), words("caution.driers"));
}

// Under a heading that says what is the matter and what to do; nothing where no lot is so.
void addMatter(SheetTable& table, const StockSheetFacts& facts, const SheetWords& words,
               const char* matter, bool StockLine::*isSo) {
    bool isFirst = true;
    for (const StockLine& line : facts.open) {
        if (!(line.*isSo))
            continue;
        if (isFirst) {
            TableRow heading{{words(matter)}};
            heading.heading = true;
            table.rows.push_back(std::move(heading));
            isFirst = false;
        }
        table.rows.push_back(
            {{shortWords(line.lot.colourWords) + " (" + line.lot.id + ")",
              keepingText(line, facts.asOf, words), estimateText(line.left_g, massDecimals, words),
              placeText(line, words)}});
    }
}

void addToSeeTo(Flow& flow, const StockSheetFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("toSeeTo.lot"), Alignment::left, 1.7, 0},
                     {words("lots.age"), Alignment::left, 0, 32},
                     {words("lots.left"), Alignment::right, 0, 34},
                     {words("lots.place"), Alignment::left, 1, 0}};
    addMatter(table, facts, words, "toSeeTo.old", &StockLine::isOld);
    addMatter(table, facts, words, "toSeeTo.low", &StockLine::isRunningLow);
    addMatter(table, facts, words, "toSeeTo.noMass", &StockLine::lacksMass);
    if (table.rows.empty())
        flow.paragraph(words("toSeeTo.nothing"));
    else
        flow.table(table);
}

void addFinished(Flow& flow, const StockSheetFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("lots.lot"), Alignment::left, 1, 0},
                     {words("lots.pigments"), Alignment::left, 0, 25},
                     {words("lots.opened"), Alignment::left, 0, 29},
                     {words("finished.finished"), Alignment::left, 0, 29},
                     {words("finished.used"), Alignment::right, 0, 24}};
    addByKind(table, facts.finished, words, [&](const StockLine& line) {
        const Lot& lot = line.lot;
        return TableRow{{nameText(lot), pigmentsText(lot, words), openedText(lot, words),
                         words.tableDateOrNotRecorded(lot.finishedOn),
                         line.used_g.high > 0 ? estimateText(line.used_g, massDecimals, words)
                                              : words("notRecorded")}};
    });
    if (table.rows.empty())
        flow.paragraph(words("none"));
    else
        flow.table(table);
}

void addRules(Flow& flow, const StockSheetFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("rules.rule"), Alignment::left, 1.6, 0},
                     {words("rules.value"), Alignment::right, 0, 24},
                     {words("rules.origin"), Alignment::left, 1, 0}};
    for (const RuleInForce& rule : facts.rules)
        table.rows.push_back(
            {{words("rules." + rule.rule), words.withUnit("days", words.shortFigure(rule.value)),
              sourceText(rule, words)}});
    flow.table(table);
    flow.paragraph(words("rules.note"), TextStyle::small);
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const StockSheetFacts& facts, const SheetWords& words);
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {
        {"toSeeTo", addToSeeTo}, {"lots", addLots}, {"finished", addFinished}, {"rules", addRules}};
    return sections;
}

FlowSetup setupOf(const StockSheetFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    setup.runningTitle = words("sheet");
    setup.info.title = words("sheet") + " " + words.day(facts.asOf);
    return setup;
}

}  // namespace

TemplateRules stockSheetRules() {
    TemplateRules rules;
    rules.sheet = "stock";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer");
    add("toSeeTo", "lot nothing old low noMass");
    add("lots",
        "lot pigments opened age left place usual counted away nothing note days days.one months "
        "months.one years years.one");
    addLabelKeysOf<LotKind>(rules.labels, "lots.kind");
    add("finished", "finished used");
    add("rules", "rule value origin note openedLifeTin_days openedLifeTube_days");
    return rules;
}

PageModel stockSheet(const StockSheetFacts& facts, const SheetTemplate& sheetTemplate,
                     const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(words("sheet"), words.filled("subtitle", {{"date", words.day(facts.asOf)}}));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name)
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
