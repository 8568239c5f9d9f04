#include "commands/Sheet.h"

#include <algorithm>
#include <map>

#include "base/Clock.h"
#include "base/Files.h"
#include "base/Text.h"
#include "cli/HarmlessStream.h"
#include "commands/BalanceToUse.h"
#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/RecordFolder.h"
#include "commands/SheetFile.h"
#include "commands/SheetKinds.h"
#include "commands/SheetReading.h"
#include "commands/SheetSelection.h"
#include "commands/TemplateAccess.h"
#include "exchange/PictureFile.h"
#include "pdf/CarriedFiles.h"
#include "pdf/PdfWriter.h"
#include "sheets/JoinedModels.h"
#include "store/AttachmentBytes.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// A slip of the hand must not cost a book or a template.
bool isPdf(const std::string& file) {
    return beginningOf(file, 5) == "%PDF-";
}

std::string nameFor(const SheetKind& kind, const SheetSubject& subject, CivilMinute asOf) {
    const std::string words = subject.edition && subject.impressions.empty() && !subject.layer
                                  ? subject.edition->code
                                  : subject.words;
    return (words.empty() ? "" : fitForFile(words) + "-") + kind.name +
           (kind.isDated ? "-" + formatDay(asOf) : "");
}

constexpr const char* standardOutput = "-";

std::string fileFor(const CommandContext& context, const std::string& name) {
    const std::string file = context.arguments.value("out").value_or(name + ".pdf");
    if (file == standardOutput)
        return file;
    if (fileExists(file) && !context.arguments.has("replace"))
        throw UsageError(file + " is there already",
                         "--replace writes over it; --out names another file.");
    if (fileExists(file) && !isPdf(file))
        throw UsageError(file + " is no PDF, and only a PDF is written over",
                         "Name another file with --out.");
    return file;
}

std::string folderFor(const CommandContext& context, const std::string& name) {
    const std::string folder = context.arguments.value("out").value_or(name);
    if (folder == standardOutput)
        throw UsageError("several files do not go to standard output", "Name a folder with --out.");
    requireNewFolder(folder, "Name a new folder, or an empty one, with --out.");
    return folder;
}

void requireFittingOptions(const CommandContext& context, const SheetKind& kind) {
    if (context.arguments.has("each") && kind.subject != SubjectKind::impressions)
        throw UsageError("--each is for sheets about impressions, one file for each",
                         "Leave it out.");
    for (const SheetKind& other : sheetKinds())
        for (const std::string& option : other.options) {
            const bool known =
                std::find(kind.options.begin(), kind.options.end(), option) != kind.options.end();
            if (!known && context.arguments.has(option))
                throw UsageError(
                    "--" + option + " says nothing to the sheet \"" + kind.name + "\"",
                    std::string("Leave it out; it belongs to \"") + other.name + "\".");
        }
}

std::string pageWords(std::size_t pages) {
    return std::to_string(pages) + (pages == 1 ? " page" : " pages");
}

// Makes the documents of one call.
class SheetMaking {
public:
    SheetMaking(CommandContext& context, const SheetKind& kind, const BookFile& book)
        : m_context(context),
          m_kind(kind),
          m_subject(subjectNamed(book, kind.subject, kind.name, context.arguments.value("about"))),
          m_asOf(asOfDay(context, bookRecordOf(book))),
          m_template(sheetTemplateFor(context, kind)),
          m_fonts(m_template.fonts()),
          m_book(book),
          m_records(recordsForSheet(book, kind, m_subject, m_asOf)),
          m_indexes(m_records),
          m_estimates(m_records, m_asOf),
          m_depth(depthOf(m_kind, context.arguments.has("with-holders"))),
          m_behind(m_indexes, m_depth, m_asOf, [this](const std::string& impression) {
              return m_estimates.of(impression, m_depth.verdictsOnly);
          }) {}

    std::string name() const { return nameFor(m_kind, m_subject, m_asOf); }

    const PdfFonts& fonts() const { return m_fonts; }

    std::vector<PageModel> documents() {
        Progress progress(m_context.console, "Sheets", m_subject.impressions.size());
        const SheetRequest request = {
            m_records,
            m_subject,
            m_asOf,
            m_context.arguments.has("with-holders"),
            m_template,
            m_fonts,
            utcText(nowEpoch_s()),
            m_context.arguments,
            [this](const Attachment& attachment) { return pictureOf(attachment); },
            [this](const SheetAbout& about) { return recordBehind(about); },
            [&progress] { progress.advance(); }};
        std::vector<PageModel> documents = m_kind.make(request);
        for (PageModel& document : documents)
            if (document.files.empty())
                document.files.push_back(recordBehind(aboutSubject(m_subject)));
        return documents;
    }

private:
    // One photograph on a thousand sheets is read once.
    std::optional<PictureFile> pictureOf(const Attachment& attachment) {
        const auto known = m_pictures.find(attachment.sha256);
        return known != m_pictures.end()
                   ? known->second
                   : m_pictures.emplace(attachment.sha256, readPicture(attachment)).first->second;
    }

    std::optional<PictureFile> readPicture(const Attachment& attachment) const {
        std::optional<std::string> bytes = attachmentBytes(m_book, attachment.sha256);
        if (!bytes || !attachment.width_px || !attachment.height_px)
            return std::nullopt;
        PictureFile picture;
        picture.mediaType = attachment.mediaType;
        // A JPEG goes into the PDF as it is, so what a camera wrote beside it would go out of the
        // studio with every sheet; of a PNG only the pixels go in.
        if (attachment.mediaType == mediaTypeOf(PictureForm::jpeg))
            *bytes = withoutMetadata(PictureForm::jpeg, "attachment " + attachment.id, *bytes);
        picture.bytes = std::make_shared<const std::string>(std::move(*bytes));
        picture.width_px = *attachment.width_px;
        picture.height_px = *attachment.height_px;
        picture.orientation = attachment.orientation.value_or(1);
        return picture;
    }

    AssociatedFile recordBehind(const SheetAbout& about) const {
        AssociatedFile file;
        file.name = recordName(m_kind, about);
        file.mediaType = "application/json";
        file.description = "The records that this sheet was made from";
        file.bytes =
            m_behind.textFor({m_kind.name, formatDay(m_asOf), m_template.language(), about});
        return file;
    }

    CommandContext& m_context;
    const SheetKind& m_kind;
    SheetSubject m_subject;
    CivilMinute m_asOf;
    SheetTemplate m_template;
    PdfFonts m_fonts;
    const BookFile& m_book;
    RecordSet m_records;
    SheetIndexes m_indexes;
    SheetEstimates m_estimates;
    SheetDepth m_depth;
    SheetRecords m_behind;
    std::map<std::string, std::optional<PictureFile>> m_pictures;  // by hash
};

// A file that check-sheet will not read is of no use to whoever gets it.
void requireReadable(const PageModel& model, const std::string& file, bool mayBeParted) {
    std::size_t bytes = 0;
    for (const AssociatedFile& record : model.files)
        bytes += record.bytes.size();
    const std::size_t most_MB = ProcessLimits().output_MB;
    if (model.files.size() <= mostCarriedFiles && bytes <= most_MB << 20)
        return;
    throw UsageError(file + " would carry " + std::to_string(model.files.size()) +
                         (model.files.size() == 1 ? " record" : " records") + " of " +
                         std::to_string((bytes >> 20) + 1) + " MB together, and no more than " +
                         std::to_string(mostCarriedFiles) + " records or " +
                         std::to_string(most_MB) + " MB can be read out of a file again",
                     mayBeParted ? "Make a file for each with --each, or name fewer impressions."
                                 : "Name less.");
}

void writeOneFile(CommandContext& context, const SheetKind& kind, SheetMaking& making) {
    const std::string file = fileFor(context, making.name());
    const PageModel model = joinedModels(making.documents());
    requireReadable(model, file, kind.subject == SubjectKind::impressions);
    const std::string bytes = writePdf(model, making.fonts());
    if (file == standardOutput) {
        streamBehind(context.console.out()) << bytes;
        return;
    }
    writeFileSafely(file, bytes);
    context.console.out() << printable(file) << ": " << pageWords(model.pages.size()) << "\n";
}

// Files are named like the records inside them.
std::string nameOf(const PageModel& document) {
    const std::string& record = document.files.front().name;
    return record.substr(0, record.rfind('.')) + ".pdf";
}

void writeOneEach(CommandContext& context, SheetMaking& making) {
    const std::string folder = folderFor(context, making.name());
    const std::vector<PageModel> documents = making.documents();
    NewFolder made(folder);
    Progress progress(context.console, "Files", documents.size());
    for (const PageModel& document : documents) {
        writeFileSafely(pathOf(made.path(), nameOf(document)), writePdf(document, making.fonts()));
        progress.advance();
    }
    made.finish();
    context.console.out() << printable(folder) << ": " << documents.size()
                          << (documents.size() == 1 ? " file" : " files") << "\n";
}

ExitCode run(CommandContext& context) {
    const SheetKind& kind = sheetKindNamed(context.arguments.text("name"));
    requireFittingOptions(context, kind);
    const BookFile book = bookToRead(context);
    SheetMaking making(context, kind, book);
    if (context.arguments.has("each"))
        writeOneEach(context, making);
    else
        writeOneFile(context, kind, making);
    return ExitCode::success;
}

std::string details() {
    std::string text;
    for (const SheetKind& kind : sheetKinds())
        text += std::string(kind.name) +
                (*subjectForm(kind.subject) ? std::string(" ") + subjectForm(kind.subject) : "") +
                " " + kind.what + ". ";
    return text +
           "\n\nThe PDF is made after the rules of PDF/A-3b, with its fonts inside, and carries "
           "the "
           "records that it was made from as a JSON file. Words, paper, fonts and the order of the "
           "sections come from a template; write one of your own that says what it is based on and "
           "what it changes, and name it with --template. Contacts stand on no sheet but that of a "
           "transfer, where --with-holders asks for them; notes "
           "stand on none.\n\n"
           "SOURCE_DATE_EPOCH fixes the date inside the file, so that the same book gives the same "
           "bytes.";
}

}  // namespace

Command sheetCommand() {
    CommandSpec spec;
    spec.name = "sheet";
    spec.group = toTranslate("group", "Sheets");
    spec.summary = toTranslate("summary", "Write a sheet as a PDF file");
    spec.details = details();
    PositionalSpec about;
    about.name = "about";
    about.help = "What it is about: an edition's CODE, SHEETS such as EEL:1-12, or an id.";
    about.required = false;
    spec.positionals = {{"name", "Which sheet: " + joined(sheetNames(), " or ") + "."}, about};
    spec.options = {
        valueOption("out", "FILE",
                    "The file to write, - for standard output, or with --each the folder.",
                    "a name made from what it is about, in the current folder"),
        valueOption("template", "FILE", "Another template than the program's own."),
        valueOption("language", "TAG",
                    "The language of the words, and the country whose way of writing figures and "
                    "dates they go by, such as de or de-AT.",
                    "the template's"),
        choiceOption("paper", "PAPER", "Other paper than the template names.", {"A4", "Letter"}),
        valueOption("on", "DATE", "As of this day; what came after is left out.",
                    "today at the studio"),
        flagOption("with-holders",
                   "Name galleries and holders where a sheet says where things "
                   "are, and in the records inside it."),
        flagOption("each", "A file for each impression, in a new folder."),
        flagOption("replace", "Write over a file that is there already.")};
    spec.options.push_back(
        valueOption("mass", "MASS", "How much ink a recipe is to make: 60 or 60g or 2oz.", "60 g"));
    for (OptionSpec& option : balanceToUseOptions())
        spec.options.push_back(std::move(option));
    spec.examples = {
        {"rackbook sheet edition EEL", "Writes EEL-edition.pdf."},
        {"rackbook sheet edition EEL --language fr --out eel-fr.pdf", "The same in French."},
        {"rackbook sheet bench FER/L3",
         "A sheet for the press; filled in as a form, rackbook take-sheet takes it in."},
        {"rackbook sheet readiness --on 2026-03-20",
         "Writes readiness-2026-03-20.pdf for the whole book."},
        {"rackbook sheet recipe EEL/L4 --mass 60 --balance kitchen-balance",
         "How the ink of layer 4 is weighed again, on one card."}};
    return {spec, run};
}

}  // namespace rackbook
