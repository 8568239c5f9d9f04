#include "commands/Day.h"

#include "base/Files.h"
#include "base/Finding.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/CommandLine.h"
#include "commands/DayDraft.h"
#include "commands/DayTalk.h"
#include "store/JointIntake.h"

namespace rackbook {

namespace {

constexpr std::size_t largestLog = 10'000'000;

std::vector<DayLine> linesGiven(const std::string& file) {
    const std::string text =
        file == "-" ? readStandardInput(largestLog) : readFile(file, largestLog);
    if (invalidUtf8At(text))
        throw InputError(file, "it is not UTF-8 text", "Save it as UTF-8.");
    std::vector<DayLine> lines = dayLines(text);
    if (lines.empty())
        throw InputError(file, "there is no entry in it", "Write one entry a line.");
    return lines;
}

std::string withoutFullStop(std::string sentence) {
    if (!sentence.empty() && sentence.back() == '.')
        sentence.pop_back();
    return sentence;
}

// Every line is tried, so that all that is wrong is told at once; one that cannot stand may make
// later ones fail.
std::vector<Finding> runLines(CommandContext& context, const BookFile& book,
                              const std::string& file, const std::vector<DayLine>& lines) {
    std::vector<Finding> findings;
    for (const DayLine& one : lines) {
        context.console.out() << context.console.emphasis(printable(lineOf(one.words))) << "\n";
        try {
            runEntry(context, book, one.words, context.console);
        } catch (const StoreError&) {
            throw;
        } catch (const Error& error) {
            Finding finding;
            finding.rule = "entry";
            finding.where.file = file;
            finding.where.line = one.line;
            finding.what = withoutFullStop(error.what());
            findings.push_back(std::move(finding));
        }
        context.console.out() << "\n";
    }
    return findings;
}

ExitCode run(CommandContext& context) {
    const std::optional<std::string> file = context.arguments.value("file");
    if (!file && !context.conversation.mayTalk())
        throw UsageError("day asks questions, and this is no terminal",
                         "Name a file with one entry a line, or - for standard input.");
    if (!file)
        return talkOfTheDay(context);
    const std::vector<DayLine> lines = linesGiven(*file);
    const BookFile book = bookToWrite(context);
    JointIntake together(book);
    std::vector<Finding> findings = runLines(context, book, *file, lines);
    if (!findings.empty())
        throw RefusedInput(std::move(findings));
    const std::string entries =
        lines.size() == 1 ? "1 entry" : std::to_string(lines.size()) + " entries";
    if (context.arguments.has("dry-run")) {
        context.console.out() << "Tried only: nothing was recorded.\n";
        return ExitCode::success;
    }
    together.keep();
    context.console.out() << "Recorded " << entries << " in " << book.path() << ".\n";
    return ExitCode::success;
}

}  // namespace

Command dayCommand() {
    CommandSpec spec;
    spec.name = "day";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "Record what happened on a day, entry by entry, all of it at once");
    spec.details =
        "On a terminal it asks what was printed, weighed, hung, looked at or moved, one plain "
        "question at a time, in any order, until there is nothing more; then everything is "
        "recorded "
        "together, or nothing. Ctrl-C within an entry leaves out that entry alone, and between "
        "entries leaves the day. What was told before a crash or a closed window is kept in a "
        "draft "
        "beside the book, and offered the next time.\n\n"
        "FILE holds the same as text: one entry a line, written like the command, with or without "
        "rackbook before it. Words with spaces in them stand between double quotes. Empty lines "
        "and lines that begin with # are passed over. An entry may use what one before it records. "
        "All lines are recorded, or none.";
    spec.positionals = {{"file", "The day as text, or - for standard input.", false}};
    spec.writesBook = true;
    spec.caution = inkCaution;
    spec.examples = {{"rackbook day", "Tell the day in a conversation."},
                     {"rackbook day evening.txt", "Record all entries of a file, or none."}};
    return {spec, run};
}

}  // namespace rackbook
