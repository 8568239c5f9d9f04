#include "commands/GivenOut.h"

#include <algorithm>
#include <tuple>

#include "base/Sha256.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/SheetFile.h"
#include "exchange/TreeJson.h"
#include "records/Forgetting.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

enum class Truth { told, changed, namesForgotten, notKnown };

const char* wordsOf(Truth truth) {
    switch (truth) {
        case Truth::told:
            return "as the book has it";
        case Truth::changed:
            return "no longer true";
        case Truth::namesForgotten:
            return "names someone forgotten since";
        case Truth::notKnown:
            break;
    }
    return "not known";
}

struct RegisterRow {
    const Issue* issue = nullptr;
    std::string about;
    std::string recipient;  // name; empty where none is recorded
    Truth truth = Truth::notKnown;
};

SheetHeading headingOf(const Issue& issue) {
    SheetHeading heading;
    heading.sheet = issue.sheetKind;
    heading.asOf = issue.asOf ? issue.asOf->text() : std::string();
    heading.language = issue.language.value_or(std::string());
    const auto idOfIt = [](const auto& ref) { return ref ? std::optional(ref->id) : std::nullopt; };
    heading.about.edition = idOfIt(issue.edition);
    for (const Ref<Impression>& impression : issue.impressions)
        heading.about.impressions.push_back(impression.id);
    heading.about.layer = idOfIt(issue.layer);
    heading.about.mix = idOfIt(issue.mix);
    heading.about.transfer = idOfIt(issue.transfer);
    heading.about.place = idOfIt(issue.place);
    return heading;
}

// Sheets that were recorded without their hash, or by a version with other sheets, are not known.
Truth truthOf(const Issue& issue, BookSheets& book) {
    if (!issue.contentSha256 || !issue.asOf)
        return Truth::notKnown;
    const std::vector<std::string> names = sheetNames();
    if (std::find(names.begin(), names.end(), issue.sheetKind) == names.end())
        return Truth::notKnown;
    const std::string text = book.textFor(headingOf(issue), issue.namesHolders);
    if (sha256(text) == *issue.contentSha256)
        return Truth::told;
    // What it said in place of the name, and so the hash of it, cannot be made again.
    static const std::string withheld = "\"name\":" + jsonLine(Tree(std::string(forgottenName)));
    const bool hasForgotten = text.find(withheld) != std::string::npos;
    return hasForgotten ? Truth::namesForgotten : Truth::changed;
}

// Sheets of a kind and a day one after the other: the book is made ready once for them all.
std::vector<const Issue*> byKindAndDay(const std::vector<Issue>& issues) {
    std::vector<const Issue*> sorted;
    for (const Issue& issue : issues)
        sorted.push_back(&issue);
    const auto key = [](const Issue* issue) {
        return std::tuple(issue->sheetKind, issue->asOf ? issue->asOf->text() : std::string(),
                          issue->namesHolders);
    };
    std::stable_sort(sorted.begin(), sorted.end(),
                     [&](const Issue* a, const Issue* b) { return key(a) < key(b); });
    return sorted;
}

std::vector<RegisterRow> rowsOf(const RecordSet& records, bool onlyChanged) {
    BookSheets book(records);
    std::vector<RegisterRow> rows;
    for (const Issue* issue : byKindAndDay(records.of<Issue>())) {
        RegisterRow row;
        row.issue = issue;
        row.about = aboutWords(records, headingOf(*issue).about);
        if (const Party* party = records.find(issue->recipient))
            row.recipient = party->name;
        row.truth = truthOf(*issue, book);
        if (!onlyChanged || row.truth == Truth::changed)
            rows.push_back(std::move(row));
    }
    // Those of one day in the order of recording, in which they lie.
    std::sort(rows.begin(), rows.end(), [](const RegisterRow& a, const RegisterRow& b) {
        return std::pair(a.issue->issuedOn.earliest(), a.issue) <
               std::pair(b.issue->issuedOn.earliest(), b.issue);
    });
    return rows;
}

// Where no row is shown, of so many sheets.
std::string wordsOfNone(std::size_t sheets) {
    if (sheets == 0)
        return "No sheet has been given out.";
    return sheets == 1 ? "The one sheet given out is not known to be untrue."
                       : "None of the " + std::to_string(sheets) +
                             " sheets given out is known to be untrue.";
}

void print(Console& console, const std::vector<RegisterRow>& rows, std::size_t sheets) {
    Table table({{"given out"}, {"sheet"}, {"about"}, {"of"}, {"to"}, {"says"}, {"issue"}});
    std::size_t changed = 0;
    bool anyForgotten = false;
    for (const RegisterRow& row : rows) {
        table.addRow({row.issue->issuedOn.text(), row.issue->sheetKind, row.about,
                      row.issue->asOf ? row.issue->asOf->text() : "", row.recipient,
                      wordsOf(row.truth), row.issue->id});
        changed += row.truth == Truth::changed ? 1 : 0;
        anyForgotten = anyForgotten || row.truth == Truth::namesForgotten;
    }
    console.out() << table.text(console.width(), wordsOfNone(sheets));
    if (changed > 0)
        printParagraph(console,
                       std::to_string(changed) + (changed == 1 ? " sheet says" : " sheets say") +
                           " what the book no longer says for its day. rackbook check-sheet on the "
                           "file tells the differences; whoever has it should get a new one.");
    if (anyForgotten)
        printParagraph(
            console,
            "Where a sheet names someone whom the book had to forget since, the book can "
            "no longer prove what it said, which makes it neither false nor altered. "
            "rackbook check-sheet on the file tells whether the rest still holds.");
}

Tree treeOf(const std::vector<RegisterRow>& rows) {
    Tree list = Tree::array();
    for (const RegisterRow& row : rows) {
        Tree one = treeOf(Record(*row.issue));
        one.set("about", row.about).set("says", wordsOf(row.truth));
        if (!row.recipient.empty())
            one.set("recipientName", row.recipient);
        list.add(std::move(one));
    }
    return list;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const RecordSet records = everythingIn(book);
    const std::vector<RegisterRow> rows = rowsOf(records, context.arguments.has("no-longer-true"));
    if (context.arguments.has("json"))
        context.console.out() << jsonText(newReport("given-out").set("sheets", treeOf(rows)));
    else
        print(context.console, rows, records.of<Issue>().size());
    const bool anyChanged = std::any_of(rows.begin(), rows.end(), [](const RegisterRow& row) {
        return row.truth == Truth::changed;
    });
    return anyChanged ? ExitCode::findings : ExitCode::success;
}

}  // namespace

Command givenOutCommand() {
    CommandSpec spec;
    spec.name = "given-out";
    spec.group = toTranslate("group", "Sheets");
    spec.summary = toTranslate(
        "summary", "List the sheets that were handed out, and which are no longer true");
    spec.details =
        "For each sheet the records behind it are gathered again for its day and held against the "
        "hash that was noted. What happened later changes nothing about an earlier day; a "
        "correction does. Where a sheet is no longer true, the exit code is 1.";
    spec.options = {flagOption("no-longer-true", "Only those that are no longer true.")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook given-out", "The register."}};
    return {spec, run};
}

}  // namespace rackbook
