#include "commands/Attached.h"

#include "base/Files.h"
#include "base/Text.h"
#include "commands/AttachmentFiles.h"
#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "store/AttachmentBytes.h"

namespace rackbook {

namespace {

// An id may end in nothing but dots.
std::string nameFor(const Attachment& attachment) {
    const std::string end = fileNameOf(attachment.id);
    const bool isName = end.find_first_not_of('.') != std::string::npos;
    return (isName ? end : "attachment") + "." + fileEndingFor(attachment.mediaType);
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Attachment attachment = recordNamed<Attachment>(book, context.arguments.text("id"));
    const std::string file = context.arguments.value("out").value_or(nameFor(attachment));
    if (fileExists(file))
        throw UsageError(file + " is there already", isFolder(file)
                                                         ? "Name a file in it with --out."
                                                         : "Name another file with --out.");
    const std::optional<std::string> bytes = attachmentBytes(book, attachment.sha256);
    if (!bytes)
        throw InputError(nameOf(Attachment::kind, attachment.id),
                         "the book knows it by its hash alone and does not hold its bytes",
                         "Take its record in again from a folder with the file in attachments/.");
    writeFileSafely(file, *bytes);
    context.console.out() << printable(file) << ": " << bytes->size() << " bytes, "
                          << attachment.mediaType << ".\n";
    return ExitCode::success;
}

}  // namespace

Command attachedCommand() {
    CommandSpec spec;
    spec.name = "attached";
    spec.group = toTranslate("group", "Record files");
    spec.summary = toTranslate("summary", "Write the file of an attachment out again");
    spec.details =
        "Writes the bytes that the book keeps, which are those whose hash stands in the record. "
        "rackbook list attachment lists what there is.";
    spec.positionals = {{"id", "Id of the attachment."}};
    spec.options = {valueOption("out", "FILE", "The file to write.",
                                "the end of the id, in the current folder")};
    spec.examples = {
        {"rackbook attached EEL/photograph --out eel.jpg", "A photograph of an edition."}};
    return {spec, run};
}

}  // namespace rackbook
