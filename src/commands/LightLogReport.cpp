#include "commands/LightLogReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/JsonReport.h"
#include "commands/LightLogGiven.h"
#include "commands/Paragraph.h"
#include "commands/SampleList.h"

namespace rackbook {

namespace {

constexpr std::size_t firstReadings = 5;

bool isOfLight(const LightLogFacts& facts) {
    return facts.log.quantity == LightQuantity::illuminance_lx;
}

CivilMinute civilOf(const LightLogFacts& facts, double utc_min) {
    return facts.shifts.civilOf(static_cast<CivilMinute>(std::floor(utc_min)));
}

std::string minuteWords(CivilMinute minute) {
    std::string text = formatMinute(minute);
    text[text.find('T')] = ' ';
    return text;
}

// The time of day; of the midnight at a day's end, 24:00.
std::string clockTime(CivilMinute minute, std::int64_t day) {
    return dayOf(minute) > day ? "24:00" : formatMinute(minute).substr(11);
}

// The same for all days, so that they line up: about four digits of the largest, and no more than
// the record keeps.
int sumDecimals(const LightLogFacts& facts) {
    double largest = 0;
    for (const LoggedDay& day : facts.days)
        largest = std::max(largest, day.exposure_h);
    if (isOfLight(facts))
        return largest < 100 ? 1 : 0;
    return largest < 10 ? 3 : 2;
}

std::string recordWords(const LoggedDay& day) {
    if (day.hasNoSpan())
        return "cannot be recorded";
    return day.meteredAs.empty() ? "new" : "metered already: " + day.meteredAs;
}

std::string columnWords(const LightLogColumns& columns) {
    std::string words = "times in \"" + columns.time + "\"";
    if (columns.date)
        words += ", dates in \"" + *columns.date + "\"";
    return words + ", values in \"" + columns.value + "\"";
}

void printHead(Console& console, const LightLogFacts& facts) {
    const LightLog& log = facts.log;
    console.out() << console.emphasis(printable(facts.path)) << ": " << log.samples.size()
                  << (log.samples.size() == 1 ? " reading of " : " readings of ")
                  << (isOfLight(facts) ? "light" : "near ultraviolet (UV-A)") << "\n";
    Table table({{"what"}, {"found"}});
    table.addRow({"columns", columnWords(log.columns)});
    table.addRow({"unit", std::string(nameOf(facts.terms.unit)) +
                              (nameOf(facts.terms.unit) == std::string(nameOf(log.quantity))
                                   ? ""
                                   : ", shown in " + std::string(nameOf(log.quantity)))});
    table.addRow({"clock", clockWords(facts.terms.clock)});
    table.addRow({"from", minuteWords(civilOf(facts, log.samples.front().utc_min))});
    table.addRow({"to", minuteWords(civilOf(facts, log.samples.back().utc_min))});
    table.addRow({"usual step", formatShortest(log.usualStep_min) + " min"});
    table.addRow({"gaps", std::to_string(log.gaps.size())});
    table.addRow({"SHA-256", facts.sha256});
    console.out() << table.text(console.width(), "");
}

void printFirst(Console& console, const LightLogFacts& facts) {
    console.out() << "\n";
    printHeading(console, "First readings");
    Table table({{"on the studio's clock"}, {nameOf(facts.log.quantity), Align::decimal}});
    const std::size_t count = std::min(firstReadings, facts.log.samples.size());
    for (std::size_t i = 0; i < count; ++i)
        table.addRow({minuteWords(civilOf(facts, facts.log.samples[i].utc_min)),
                      formatShortest(facts.log.samples[i].value)});
    console.out() << table.text(console.width(), "");
}

void printDays(Console& console, const LightLogFacts& facts) {
    console.out() << "\n";
    printHeading(console, "Days at " + facts.place.name + " (" + facts.place.id + ")");
    Table table({{"day"},
                 {"from"},
                 {"to"},
                 {"seen h", Align::decimal},
                 {isOfLight(facts) ? "lx·h" : "Wh/m²", Align::decimal},
                 {"record"}});
    const int decimals = sumDecimals(facts);
    for (const LoggedDay& day : facts.days)
        table.addRow({formatDay(day.day * minutesPerDay), clockTime(day.from, day.day),
                      clockTime(day.to, day.day), formatFixed(day.covered_h, 2),
                      formatFixed(day.exposure_h, decimals), recordWords(day)});
    console.out() << table.text(console.width(), "No day is left.");
}

Tree dayTree(const LightLogFacts& facts, const LoggedDay& day) {
    Tree one = Tree::object();
    one.set("day", formatDay(day.day * minutesPerDay));
    one.set("from", formatMinute(day.from)).set("to", formatMinute(day.to));
    one.set("covered_h", day.covered_h).set("seenThrough", day.isSeenThrough);
    one.set(isOfLight(facts) ? "exposure_lxh" : "nearUltraviolet_Whm2", day.exposure_h);
    one.set("record", day.hasNoSpan() ? Tree() : Tree(day.id));
    one.set("meteredAs", day.meteredAs.empty() ? Tree() : Tree(day.meteredAs));
    return one;
}

}  // namespace

void printLightLog(Console& console, const LightLogFacts& facts) {
    printHead(console, facts);
    printFirst(console, facts);
    printDays(console, facts);
    printParagraph(console,
                   "Between readings the light is taken as a straight line; what lies in a gap "
                   "was not seen and adds nothing. Nothing was recorded; --record makes a metering "
                   "of each new day.");
    printNotes(console, facts.log.notes);
}

Tree lightLogTree(const LightLogFacts& facts) {
    const LightLog& log = facts.log;
    const auto moment = [&](double utc_min) { return formatMinute(civilOf(facts, utc_min)); };
    Tree report = newReport("take-light-log");
    report.set("file", facts.path).set("sha256", facts.sha256).set("place", facts.place.id);
    report.set("quantity", isOfLight(facts) ? "illuminance_lx" : "ultravioletA_Wm2");
    report.set("columns", Tree::object()
                              .set("time", log.columns.time)
                              .set("date", log.columns.date ? Tree(*log.columns.date) : Tree())
                              .set("value", log.columns.value));
    report.set("readings", log.samples.size()).set("usualStep_min", log.usualStep_min);
    report.set("from", moment(log.samples.front().utc_min));
    report.set("to", moment(log.samples.back().utc_min));
    Tree first = Tree::array();
    for (std::size_t i = 0; i < std::min(firstReadings, log.samples.size()); ++i)
        first.add(Tree::object()
                      .set("at", moment(log.samples[i].utc_min))
                      .set("value", log.samples[i].value));
    Tree gaps = Tree::array();
    for (const LightGap& gap : log.gaps)
        gaps.add(Tree::object()
                     .set("from", moment(gap.from_utc_min))
                     .set("until", moment(gap.until_utc_min)));
    Tree days = Tree::array();
    for (const LoggedDay& day : facts.days)
        days.add(dayTree(facts, day));
    report.set("first", std::move(first)).set("gaps", std::move(gaps));
    report.set("days", std::move(days)).set("notes", treeOf(log.notes));
    return report;
}

}  // namespace rackbook
