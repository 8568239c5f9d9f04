#include "commands/Attach.h"

#include "base/Files.h"
#include "base/Sha256.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/SheetSelection.h"
#include "exchange/PictureFile.h"

namespace rackbook {

namespace {

// Of a file that is read at all; what is too large for a picture is told by the reader of pictures.
constexpr std::size_t largestFile_B = std::size_t{1} << 30;

// What it shows. Throws UsageError unless exactly one thing is named.
void setSubject(const CommandContext& context, const BookFile& book, Attachment& attachment) {
    const Arguments& arguments = context.arguments;
    const int given = (arguments.has("edition") ? 1 : 0) + (arguments.has("impression") ? 1 : 0) +
                      (arguments.has("drawdown") ? 1 : 0);
    if (given != 1)
        throw UsageError("a photograph belongs to one edition, impression or drawdown",
                         "Give one of --edition, --impression and --drawdown.");
    if (const std::optional<std::string> code = arguments.value("edition"))
        attachment.edition = Ref<Edition>{editionNamed(book, *code).id};
    attachment.drawdown = refGiven<Drawdown>(context, book, "drawdown");
    if (const std::optional<std::string> words = arguments.value("impression")) {
        const std::vector<Impression> sheets = sheetsNamed(book, *words).sheets;
        if (sheets.size() != 1)
            throw UsageError("--impression names " + std::to_string(sheets.size()) + " sheets",
                             "Name one, such as EEL:7; what shows them all belongs to the "
                             "edition.");
        attachment.impression = Ref<Impression>{sheets.front().id};
    }
}

void warnOfSameBytes(CommandContext& context, const BookFile& book, const Attachment& attachment) {
    for (const Attachment& other : thoseOf<Attachment>(book, "sha256", attachment.sha256))
        if (other.id != attachment.id)
            context.console.err() << "rackbook: the same picture is in the book as "
                                  << nameOf(Attachment::kind, other.id) << " already.\n";
}

void tellMetadata(Console& console, const PictureFacts& facts, bool kept) {
    std::vector<std::string> words = facts.metadata;
    if (facts.hasLocation)
        words.insert(words.begin(), "a location");
    if (words.empty())
        return;
    printParagraph(console, (kept ? "Kept with the picture: " : "Taken out of what is kept: ") +
                                joined(words, " and ") +
                                (kept ? ". Whoever gets it can read that."
                                      : ". The file itself was not touched."));
}

ExitCode run(CommandContext& context) {
    const Arguments& arguments = context.arguments;
    const bool keepsMetadata = arguments.has("keep-metadata");
    const std::string file = arguments.text("file");
    requireRegularFile(file);
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    Attachment attachment;
    setSubject(context, book, attachment);
    KeptPicture picture = readPicture(file, readFile(file, largestFile_B), keepsMetadata);
    attachment.takenOn = dateGiven(context, "taken-on");
    attachment.id = arguments.value("id").value_or(
        freshId(Attachment::kind, attachment.takenOn.value_or(dayIn(nowAt(studio)))));
    if (arguments.has("id"))
        requireNewId<Attachment>(book, attachment.id);
    attachment.sha256 = sha256(picture.bytes);
    attachment.mediaType = mediaTypeOf(picture.facts.form);
    attachment.width_px = picture.facts.width_px;
    attachment.height_px = picture.facts.height_px;
    if (picture.facts.orientation != 1)
        attachment.orientation = picture.facts.orientation;
    attachment.caption = arguments.value("caption");
    attachment.note = arguments.value("note");
    warnOfSameBytes(context, book, attachment);
    MadeRecord made{attachment};
    made.bytes = std::move(picture.bytes);
    const ExitCode code = recordMade(context, book, {made});
    tellMetadata(context.console, picture.facts, keepsMetadata);
    return code;
}

}  // namespace

Command attachCommand() {
    CommandSpec spec;
    spec.name = "attach";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Keep a photograph or scan in the book");
    spec.details =
        "FILE is a JPEG or a PNG of at most 40 MB and 100 million pixels. It is read from "
        "beginning "
        "to end, so that no damaged picture is kept, and its bytes are kept in the book. What a "
        "camera writes beside the picture is left out of them, where it was taken among it, unless "
        "--keep-metadata is given; the picture itself, its resolution and the meaning of its "
        "colours stay as they are. How it is to be turned stands in the record.\n\n"
        "Refused is what an archival sheet could not hold: CMYK, 16 bits a component, interlaced "
        "and see-through pictures. rackbook attached writes the file out again.";
    spec.positionals = {{"file", "The JPEG or PNG."}};
    spec.options = {
        valueOption("edition", "CODE", "The edition that it shows."),
        valueOption("impression", "SHEET", "The impression that it shows, such as TIDE:7."),
        valueOption("drawdown", "ID", "The drawdown that it shows."),
        valueOption("caption", "TEXT", "What it shows, in words."),
        valueOption("taken-on", "DATE", "When it was taken, as well as it is known."),
        flagOption("keep-metadata", "Keep what the camera wrote beside the picture too."),
        valueOption("note", "TEXT", "Anything else worth keeping."),
        valueOption("id", "ID", "An id of your own for the record.", "one is made up")};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook attach demo-edition/from-the-camera.jpg --impression EEL:24 "
         "--caption \"On the table by the window\"",
         "A photograph of one sheet."}};
    return {spec, run};
}

}  // namespace rackbook
