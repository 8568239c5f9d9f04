#include "commands/TakeSheet.h"

#include <regex>
#include <set>

#include "base/Numbers.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/HeapOnSlab.h"
#include "commands/Paragraph.h"
#include "commands/RecordingFrom.h"
#include "commands/SheetRun.h"
#include "commands/TemplateAccess.h"
#include "commands/WeighWarnings.h"
#include "sheets/BenchSheet.h"
#include "store/HistoryPart.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// The words of the program's own template: a sheet of another template has the same boxes, and
// their names are told beside the labels.
SheetTemplate templateIn(const CommandContext& context, const std::string& language) {
    static const std::regex tag("[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*");
    const TemplateSource source = templatesInFiles(context.folders.templates);
    TemplateWish wish;
    wish.sheet = "bench";
    if (std::regex_match(language, tag)) {
        wish.language = language;
        try {
            return SheetTemplate::read(gatherTemplate(source, wish), benchSheetRules());
        } catch (const UsageError&) {
            wish.language.reset();  // words of a studio's own, in a language that is not here
        }
    }
    return SheetTemplate::read(gatherTemplate(source, wish), benchSheetRules());
}

// What a record refuses is told by the box that it came from.
void tryRecords(const CommandContext& context, const std::vector<RecordFromBoxes>& made,
                FilledBoxes& boxes) {
    RecordFileReader reader(context.folders.schema);
    for (std::size_t i = 0; i < made.size(); ++i)
        reader.add(made[i].made.record, std::to_string(i));
    for (const Finding& finding : reader.findings()) {
        const auto number = static_cast<std::size_t>(parseWhole(finding.where.file).value_or(0));
        const auto box = made[number].boxes.find(finding.where.pointer);
        const bool isKnown = box != made[number].boxes.end();
        std::string name = isKnown ? box->second : "pull.day";
        if (name == "pull.start" && boxes.text(name).empty())
            name = "pull.day";
        boxes.refuse(name, (isKnown ? "" : finding.where.pointer + ": ") + finding.what,
                     finding.remedy, finding.value);
    }
}

class SheetsTaking {
public:
    SheetsTaking(CommandContext& context, BookFile& book)
        : m_context(context), m_book(book), m_records(everythingIn(book)) {}

    void read(const std::string& path) {
        const ReturnedSheet sheet = returnedSheet(path, m_book, m_records);
        if (!m_identities.insert(sheet.identity).second)
            throw UsageError(path + " is the same sheet as another of these files",
                             "Name each sheet once.");
        const SheetTemplate sheetTemplate = templateIn(m_context, sheet.language);
        const SheetWords words(sheetTemplate);
        FilledBoxes boxes(sheet, words);
        std::vector<RecordFromBoxes> made;
        if (boxes.findings().empty()) {
            if (boxes.isBlank())
                throw InputError(path, "nothing was filled in",
                                 "Fill it in, save it, and name it again.");
            made = recordsOfSheet(m_book, m_records, boxes);
            tryRecords(m_context, made, boxes);
        }
        m_findings.insert(m_findings.end(), boxes.findings().begin(), boxes.findings().end());
        for (const RecordFromBoxes& one : made)
            add(one.made, path);
    }

    ExitCode record(const std::string& source) {
        if (!m_findings.empty())
            throw RefusedInput(m_findings);
        std::vector<std::string> warnings;
        for (const MadeRecord& one : m_made) {
            const Pull* pull = std::get_if<Pull>(&one.record);
            if (pull && pull->portion && findIn<Mix>(m_book, pull->portion->id))
                warnings.push_back(oldHeapWords(m_book, *pull));
        }
        const ExitCode code = recordMadeFrom(source, m_context, m_book, m_made);
        for (const std::string& warning : warnings)
            if (!warning.empty())
                printParagraph(m_context.console, warning);
        if (!m_context.arguments.has("dry-run"))
            warnOfMade();
        return code;
    }

private:
    void warnOfMade() {
        std::vector<Weighing> weighings;
        for (const MadeRecord& one : m_made)
            if (const Weighing* weighing = std::get_if<Weighing>(&one.record))
                if (m_records.find<Weighing>(weighing->id) == nullptr)
                    weighings.push_back(*weighing);
        if (weighings.empty())
            return;
        const PartOfInk part = inkPartOf(m_book, inkPartBehind(weighings));
        // What was recorded last stands last.
        warnOfWeighings(m_context.console, m_book, part, part.weighings.size() - weighings.size());
    }

    // Two sheets in one call do not know of each other.
    void add(const MadeRecord& made, const std::string& path) {
        if (const Pull* pull = std::get_if<Pull>(&made.record))
            for (const Ref<Impression>& impression : pull->impressions)
                if (!m_printed.insert({pull->layer.id, impression.id}).second)
                    throw UsageError(path + " says that " + impression.id +
                                         " was printed, and so does another of these sheets of " +
                                         pull->layer.id,
                                     "Take in the one that is right.");
        m_made.push_back(made);
    }

    CommandContext& m_context;
    BookFile& m_book;
    RecordSet m_records;
    std::set<std::string> m_identities;
    std::set<std::pair<std::string, std::string>> m_printed;
    std::vector<MadeRecord> m_made;
    std::vector<Finding> m_findings;
};

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const std::vector<std::string>& files = context.arguments.values("file");
    SheetsTaking taking(context, book);
    for (const std::string& file : files)
        taking.read(file);
    return taking.record(files.size() == 1 ? files.front() : "the bench sheets");
}

}  // namespace

Command takeSheetCommand() {
    CommandSpec spec;
    spec.name = "take-sheet";
    spec.group = toTranslate("group", "Record files");
    spec.summary =
        toTranslate("summary", "Take bench sheets that were filled in as PDF forms into the book");
    spec.details =
        "A bench sheet from rackbook sheet bench is a form: fill it in on a tablet or a computer "
        "with any program that fills in PDF forms, save it, and name it here. It becomes what "
        "rackbook weigh, pull and hang would record: the portion and what was weighed into it, the "
        "run, the sheets that were spoiled, and where the others hang; remarks go to the note of "
        "the run. All sheets named are recorded, or none, and what is recorded is shown.\n\n"
        "The day and a tick at one impression at least must be there. Numbers have a decimal point "
        "or a decimal comma; a day is written as 2026-03-28, or in the order of the sheet's "
        "language; places, people, lots and portions by id or name. Drier given as a share of the "
        "ink alone is reckoned from the other masses, and the weighing says so.\n\n"
        "A sheet is refused where it was taken already, and where the book says something else by "
        "now of its layer and its impressions. Every box that is wrong is told by its label and "
        "its name. The PDF is read in a process of its own with limits on memory and time, and of "
        "the form only its values are read.";
    spec.positionals = {{"file", "PDF of a bench sheet that was filled in.", true, true}};
    spec.writesBook = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook take-sheet EEL-L9-bench.pdf --dry-run", "What would it record?"},
        {"rackbook take-sheet EEL-L9-bench.pdf BRK-L3-bench.pdf", "Take in two sheets of a day."}};
    return {spec, run};
}

}  // namespace rackbook
