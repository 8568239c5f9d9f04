#include "commands/CheckSheet.h"

#include <algorithm>
#include <set>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/SheetFile.h"
#include "commands/TransferSheetKind.h"
#include "exchange/TreeJson.h"
#include "records/Forgetting.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

struct CheckedSheet {
    SheetHeading heading;
    std::string about;
    SheetComparison comparison;
    bool namesForgotten = false;  // it says a name that the book had to forget since

    // What the book had to forget makes a sheet neither true nor false.
    bool isTrue() const { return comparison.isTrue(); }
};

bool isAboutForgotten(const FactsDifference& difference) {
    const bool mayBe =
        difference.record.rfind("party ", 0) == 0 || difference.record.rfind("place ", 0) == 0;
    return mayBe && difference.field == "name" && difference.inBook == forgottenName;
}

CheckedSheet checkedSheet(const RecordSet& records, const CarriedSheet& sheet,
                          SheetComparison comparison) {
    CheckedSheet checked{sheet.facts.heading, aboutWords(records, sheet.facts.heading.about),
                         std::move(comparison)};
    std::vector<FactsDifference>& differences = checked.comparison.differences;
    const auto end = std::remove_if(differences.begin(), differences.end(), isAboutForgotten);
    checked.namesForgotten = end != differences.end();
    differences.erase(end, differences.end());
    return checked;
}

struct SheetCheck {
    std::vector<const Issue*> sameFile;   // given out with just these bytes
    std::vector<const Issue*> sameFacts;  // given out with these records, but other bytes
    std::vector<CheckedSheet> sheets;

    bool namesForgotten() const {
        return std::any_of(sheets.begin(), sheets.end(),
                           [](const CheckedSheet& sheet) { return sheet.namesForgotten; });
    }
    bool isTrue() const {
        return std::all_of(sheets.begin(), sheets.end(),
                           [](const CheckedSheet& sheet) { return sheet.isTrue(); });
    }
    // Whether a file with the same records, but other bytes, was given out before this one. Both
    // are in the order of recording, in which issues lie.
    bool wasChanged() const {
        return !sameFacts.empty() && (sameFile.empty() || sameFacts.front() < sameFile.front());
    }
};

SheetCheck checkOf(const SheetFile& file, const RecordSet& records) {
    SheetCheck check;
    std::set<std::string> carried;
    for (const CarriedSheet& sheet : file.sheets)
        carried.insert(sheet.sha256);
    for (const Issue& issue : records.of<Issue>()) {
        if (issue.fileSha256 == file.sha256)
            check.sameFile.push_back(&issue);
        else if (issue.contentSha256 && carried.count(*issue.contentSha256) != 0)
            check.sameFacts.push_back(&issue);
    }
    BookSheets book(records);
    for (const CarriedSheet& sheet : file.sheets)
        check.sheets.push_back(checkedSheet(records, sheet, book.compare(sheet)));
    return check;
}

std::string issueWords(const Issue& issue, const RecordSet& records) {
    const Party* party = records.find(issue.recipient);
    return "on " + issue.issuedOn.text() + (party ? " to " + party->name : "") + " (" + issue.id +
           ")";
}

std::string registerWords(const SheetCheck& check, const RecordSet& records) {
    const auto listed = [&](const std::vector<const Issue*>& issues) {
        std::vector<std::string> words;
        for (const Issue* issue : issues)
            words.push_back(issueWords(*issue, records));
        return joined(words);
    };
    if (!check.sameFile.empty())
        return "This is, byte for byte, the file that was given out " + listed(check.sameFile) +
               "." +
               (check.sameFacts.empty()
                    ? std::string()
                    : " A file of other bytes with the same records was given out " +
                          listed(check.sameFacts) +
                          ": the later one was made anew, or altered. Trust what the pages of the "
                          "first say.");
    if (!check.sameFacts.empty())
        return "A sheet with these records was given out " + listed(check.sameFacts) +
               ", but in a file of other bytes: this one was altered, or made anew. Do not trust "
               "what its pages say.";
    return "It is not among the sheets that were given out: whether its pages were altered cannot "
           "be told, only whether the records inside it are those of the book.";
}

std::string shortened(const std::string& text) {
    constexpr std::size_t most = 200;
    const std::size_t end = offsetOfCodePoint(text, most);
    return end < text.size() ? text.substr(0, end) + "…" : text;
}

void printDifferences(Console& console, const CheckedSheet& sheet) {
    Table table({{"record"}, {"field"}, {"on the sheet"}, {"in the book"}});
    for (const FactsDifference& difference : sheet.comparison.differences)
        table.addRow({difference.record, difference.field.empty() ? "all" : difference.field,
                      difference.onSheet.empty() ? "–" : shortened(difference.onSheet),
                      difference.inBook.empty() ? "–" : shortened(difference.inBook)});
    console.out() << "\n";
    printHeading(console, "Of " + sheet.about + ", as of " + sheet.heading.asOf +
                              ", the book says something else now");
    console.out() << table.text(console.width(), "");
}

void print(Console& console, const SheetFile& file, const SheetCheck& check,
           const RecordSet& records) {
    const CheckedSheet& first = check.sheets.front();
    const std::string more =
        check.sheets.size() > 1 ? " and " + std::to_string(check.sheets.size() - 1) + " more" : "";
    console.out() << printable(file.path) << ": " << printable(first.heading.sheet) << " of "
                  << printable(first.about) << more << ", as of " << printable(first.heading.asOf)
                  << "\n";
    printParagraph(console, registerWords(check, records));
    if (check.isTrue())
        printParagraph(console,
                       check.namesForgotten()
                           ? "The records inside it are those of the book, but for a name."
                           : "The records inside it are those of the book: the sheet is still "
                             "true.");
    if (check.namesForgotten())
        printParagraph(console,
                       "It says a name that the book had to forget since. That makes the sheet "
                       "neither false nor altered; whether the name was right, the book can no "
                       "longer say.");
    // Those of a transfer's parties are printed where they are asked for.
    if (first.heading.sheet == transferSheetKind().name)
        printParagraph(
            console, "Contacts stand in no record: those on its pages, if any, were not checked.");
    for (const CheckedSheet& sheet : check.sheets)
        if (sheet.comparison.isRewritten)
            printParagraph(console, "The record of " + sheet.about +
                                        " says what the book says, but in other bytes than "
                                        "rackbook writes: another program wrote it anew.");
    for (const CheckedSheet& sheet : check.sheets)
        if (!sheet.comparison.differences.empty())
            printDifferences(console, sheet);
}

Tree treeOf(const CheckedSheet& sheet) {
    Tree differences = Tree::array();
    for (const FactsDifference& difference : sheet.comparison.differences)
        differences.add(Tree::object()
                            .set("record", difference.record)
                            .set("field", difference.field)
                            .set("onSheet", difference.onSheet)
                            .set("inBook", difference.inBook));
    return Tree::object()
        .set("sheet", sheet.heading.sheet)
        .set("about", sheet.about)
        .set("asOf", sheet.heading.asOf)
        .set("isRewritten", sheet.comparison.isRewritten)
        .set("namesForgotten", sheet.namesForgotten)
        .set("differences", std::move(differences));
}

Tree treeOf(const SheetFile& file, const SheetCheck& check) {
    const auto ids = [](const std::vector<const Issue*>& issues) {
        Tree list = Tree::array();
        for (const Issue* issue : issues)
            list.add(issue->id);
        return list;
    };
    Tree sheets = Tree::array();
    for (const CheckedSheet& sheet : check.sheets)
        sheets.add(treeOf(sheet));
    return newReport("check-sheet")
        .set("fileSha256", file.sha256)
        .set("givenOutAs", ids(check.sameFile))
        .set("givenOutInAnotherFile", ids(check.sameFacts))
        .set("isTrue", check.isTrue())
        .set("sheets", std::move(sheets));
}

ExitCode run(CommandContext& context) {
    const SheetFile file = readSheetFile(context.arguments.text("file"));
    const BookFile book = bookToRead(context);
    const RecordSet records = everythingIn(book);
    const SheetCheck check = checkOf(file, records);
    if (context.arguments.has("json"))
        context.console.out() << jsonText(treeOf(file, check));
    else
        print(context.console, file, check, records);
    return check.isTrue() && !check.wasChanged() ? ExitCode::success : ExitCode::findings;
}

}  // namespace

Command checkSheetCommand() {
    CommandSpec spec;
    spec.name = "check-sheet";
    spec.group = toTranslate("group", "Sheets");
    spec.summary =
        toTranslate("summary", "Say whether a sheet is still true, and whether it was altered");
    spec.details =
        "Takes the records out of the PDF, gathers the same from the book for the same day, and "
        "tells every difference. The register of sheets that were given out says whether the file "
        "is the one that left the studio. The PDF is read in a process of its own with limits on "
        "memory and time, so that a file from anywhere can be checked. Exit code 1 where the sheet "
        "is no longer true or was altered.";
    spec.positionals = {{"file", "The PDF."}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook check-sheet EEL-edition.pdf", "Is it still true?"}};
    return {spec, run};
}

}  // namespace rackbook
