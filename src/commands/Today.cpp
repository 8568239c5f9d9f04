#include "commands/Today.h"

#include "base/Files.h"
#include "base/Translated.h"
#include "cli/Table.h"
#include "commands/BackupNote.h"
#include "commands/BookAccess.h"
#include "commands/DayDraft.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/TodayPlan.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

Tree treeOf(const std::vector<TodaySection>& sections, CivilMinute asOf) {
    Tree report = newReport("today");
    report.set("on", formatDay(asOf));
    for (const TodaySection& section : sections) {
        Tree lines = Tree::array();
        for (const TodayLine& line : section.lines) {
            Tree one = Tree::object();
            one.set("what", line.what).set("where", line.where).set("why", line.why);
            lines.add(std::move(one));
        }
        report.set(section.name, std::move(lines));
    }
    return report;
}

void print(Console& console, const TodaySection& section) {
    if (section.lines.empty())
        return;
    bool hasWhere = false;
    for (const TodayLine& line : section.lines)
        hasWhere = hasWhere || !line.where.empty();
    std::vector<Column> columns = {{section.heading}};
    if (hasWhere)
        columns.push_back({translated("today", "where")});
    columns.push_back({""});
    Table table(columns);
    for (const TodayLine& line : section.lines)
        table.addRow(hasWhere ? std::vector<std::string>{line.what, line.where, line.why}
                              : std::vector<std::string>{line.what, line.why});
    console.out() << "\n" << table.text(console.width(), {});
}

void printDraft(Console& console, const std::string& bookPath) {
    const std::string draft = DayDraft::pathFor(bookPath);
    if (fileExists(draft))
        printParagraph(console,
                       translated("today",
                                  "A day was told and not recorded yet: rackbook day goes on with "
                                  "it."));
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const CivilMinute asOf = asOfDay(context, studio);
    std::vector<TodaySection> sections = todayIn(book, asOf);
    sections.push_back(backUpSection(book, studio, asOf));
    if (context.arguments.has("json")) {
        context.console.out() << jsonText(treeOf(sections, asOf));
        return ExitCode::success;
    }
    Console& console = context.console;
    console.out() << studio.studio << ", " << formatDay(asOf) << "\n";
    bool hasAny = false;
    for (const TodaySection& section : sections) {
        hasAny = hasAny || !section.lines.empty();
        print(console, section);
    }
    if (!hasAny)
        printParagraph(console, translated("today", "Nothing waits."));
    printDraft(console, book.path());
    printParagraph(console,
                   translated("today",
                              "rackbook ready --why gives the reasons about prints; nothing is "
                              "ready without recorded looks. What hangs at a gallery or a holder's "
                              "is not listed here."));
    return ExitCode::success;
}

}  // namespace

Command todayCommand() {
    CommandSpec spec;
    spec.name = "today";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate("summary", "Say what there is to do now");
    spec.details =
        "Which prints to bring out of the dark, to look at, to put away or to leave hanging; which "
        "heaps of ink near their end; which tins are old or nearly out; which consignments and "
        "loans are overdue or end within a week; which promised cancellations are not recorded; "
        "whether a day was told and not recorded; and whether the last backup is old.";
    spec.options = {valueOption("on", "DATE", "Judge as of this day.", "today at the studio")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook today", "The morning's list."}};
    return {spec, run};
}

}  // namespace rackbook
