#include "commands/Sheet.h"

#include "base/Clock.h"
#include "base/Files.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/SheetKinds.h"
#include "commands/TemplateAccess.h"
#include "pdf/PdfWriter.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// An edition's code may hold what a file name should not.
std::string fit(const std::string& code) {
    std::string name;
    for (const char c : code) {
        const bool odd = (c >= 0 && c <= ' ') || c == '/' || c == '\\' || c == ':';
        name += odd ? '-' : c;
    }
    return !name.empty() && name.front() == '.' ? "-" + name : name;
}

// A slip of the hand must not cost a book or a template.
bool isPdf(const std::string& file) {
    return beginningOf(file, 5) == "%PDF-";
}

std::string fileFor(const CommandContext& context, const SheetKind& kind,
                    const std::optional<Edition>& edition, CivilMinute asOf) {
    const std::string file = context.arguments.value("out").value_or(
        kind.fileName(edition ? fit(edition->code) : std::string(), asOf) + ".pdf");
    if (fileExists(file) && !context.arguments.has("replace"))
        throw UsageError(file + " is there already",
                         "--replace writes over it; --out names another file.");
    if (fileExists(file) && !isPdf(file))
        throw UsageError(file + " is no PDF, and only a PDF is written over",
                         "Name another file with --out.");
    return file;
}

std::optional<Edition> editionFor(const CommandContext& context, const BookFile& book,
                                  const SheetKind& kind) {
    if (const std::optional<std::string> code = context.arguments.value("edition"))
        return editionNamed(book, *code);
    if (kind.needsEdition)
        throw UsageError("the sheet \"" + std::string(kind.name) + "\" is about one edition",
                         "Name it with --edition CODE.");
    return std::nullopt;
}

ExitCode run(CommandContext& context) {
    const SheetKind& kind = sheetKindNamed(context.arguments.text("name"));
    const BookFile book = bookToRead(context);
    const std::optional<Edition> edition = editionFor(context, book, kind);
    const CivilMinute asOf = asOfDay(context, bookRecordOf(book));
    const std::string file = fileFor(context, kind, edition, asOf);
    const SheetTemplate sheetTemplate = sheetTemplateFor(context, kind);
    const PdfFonts fonts(sheetTemplate.fonts());
    const RecordSet records = everythingIn(book);
    const PageModel model =
        kind.make({records, edition, asOf, context.arguments.has("with-holders"), sheetTemplate,
                   fonts, utcText(nowEpoch_s())});
    writeFileSafely(file, writePdf(model, fonts));
    const std::size_t pages = model.pages.size();
    context.console.out() << printable(file) << ": " << pages << (pages == 1 ? " page" : " pages")
                          << "\n";
    return ExitCode::success;
}

std::string details() {
    std::string text;
    for (const SheetKind& kind : sheetKinds())
        text += std::string(kind.name) + " " + kind.what + ". ";
    return text +
           "\n\nThe PDF is made after the rules of PDF/A-3b, with its fonts inside. Words, paper, "
           "fonts and the order of the sections come from a template; write one of your own that "
           "says "
           "what it is based on and what it changes, and name it with --template. Contacts and "
           "notes stand on no sheet.\n\nSOURCE_DATE_EPOCH fixes the date inside the file, so that "
           "the same book "
           "gives the same bytes.";
}

}  // namespace

Command sheetCommand() {
    CommandSpec spec;
    spec.name = "sheet";
    spec.group = "Sheets";
    spec.summary = "Write a sheet as a PDF file";
    spec.details = details();
    spec.positionals = {{"name", "Which sheet: " + joined(sheetNames(), " or ") + "."}};
    spec.options = {
        valueOption("edition", "CODE",
                    "The edition; the edition sheet needs it, others take the whole book without."),
        valueOption("out", "FILE", "The file to write.",
                    "CODE-edition.pdf or readiness-DATE.pdf in the current folder"),
        valueOption("template", "FILE", "Another template than the program's own."),
        valueOption("language", "TAG",
                    "The language of the words, and the country whose way of writing figures and "
                    "dates they go by, such as de or de-AT.",
                    "the template's"),
        choiceOption("paper", "PAPER", "Other paper than the template names.", {"A4", "Letter"}),
        valueOption("on", "DATE", "As of this day; what came after is left out.",
                    "today at the studio"),
        flagOption("with-holders",
                   "Name galleries and holders where the readiness sheet says where things are."),
        flagOption("replace", "Write over a file that is there already.")};
    spec.examples = {{"rackbook sheet edition --edition EEL", "Writes EEL-edition.pdf."},
                     {"rackbook sheet edition --edition EEL --language fr --out eel-fr.pdf",
                      "The same in French."},
                     {"rackbook sheet readiness --on 2026-03-20",
                      "Writes readiness-2026-03-20.pdf for the whole book."}};
    return {spec, run};
}

}  // namespace rackbook
