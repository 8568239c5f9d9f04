#include "commands/Impressions.h"

#include <set>

#include "base/Ranges.h"
#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/SheetSelection.h"

namespace rackbook {

namespace {

std::string twoDigits(int number) {
    return (number < 10 ? "0" : "") + std::to_string(number);
}

void requireNewNumbers(const BookFile& book, const Edition& edition,
                       const std::vector<int>& wanted) {
    std::set<int> taken;
    for (const Impression& sheet : sheetsOf(book, edition))
        taken.insert(sheet.workingNumber);
    std::vector<int> repeated;
    for (const int number : wanted)
        if (taken.count(number) != 0)
            repeated.push_back(number);
    if (!repeated.empty())
        throw UsageError("edition " + edition.code + " has " +
                             (repeated.size() == 1 ? "sheet " : "sheets ") +
                             formatRanges(repeated) + " already",
                         "Leave out what is there, or use higher numbers.");
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Edition edition = editionNamed(book, context.arguments.text("edition"));
    const std::vector<int> numbers = parseRanges(context.arguments.text("range"));
    requireNewNumbers(book, edition, numbers);
    std::vector<MadeRecord> made;
    for (const int number : numbers) {
        Impression sheet;
        sheet.id = edition.id + "/" + twoDigits(number);
        sheet.edition = {edition.id};
        sheet.workingNumber = number;
        sheet.note = context.arguments.value("note");
        requireNewId<Impression>(book, sheet.id);
        made.push_back({sheet, std::nullopt});
    }
    return recordMade(context, book, made);
}

}  // namespace

Command impressionsCommand() {
    CommandSpec spec;
    spec.name = "impressions";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Enter sheets of paper under their working numbers");
    spec.details =
        "A working number is pencilled on the sheet while it is printed, and stays with it. The "
        "designation, such as 7/30, is given at the end with rackbook sign.";
    spec.positionals = {{"edition", "Code of the edition."},
                        {"range", "Working numbers, such as 1-24 or 1-12,15."}};
    spec.options = {valueOption("note", "TEXT", "The same note for each of them.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook impressions EEL 35-40", "Six more sheets of the edition EEL."}};
    return {spec, run};
}

}  // namespace rackbook
