#include "commands/Edition.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "records/Designation.h"

namespace rackbook {

namespace {

// "AP=3" or "artistsProof=3"
DeclaredProofs proofsGiven(const std::string& words) {
    const std::size_t sign = words.find('=');
    const std::string kindWords = words.substr(0, sign);
    std::optional<DesignationKind> kind = enumFrom<DesignationKind>(kindWords);
    if (!kind)
        kind = designationKindOf(kindWords);
    if (!kind)
        throw UsageError("--proofs does not know the kind \"" + excerpt(kindWords) + "\"",
                         "Use AP, BAT, PP, HC, TP or WP, or one of " +
                             joined(enumNames<DesignationKind>(), " or ") + ".");
    const std::optional<long long> count =
        sign == std::string::npos ? std::nullopt : parseWhole(words.substr(sign + 1));
    if (!count || *count < 1 || *count > 100'000)
        throw UsageError("--proofs \"" + excerpt(words) + "\" has no number of proofs",
                         "Write kind and number, such as AP=3.");
    return {*kind, static_cast<int>(*count)};
}

void setSizes(const CommandContext& context, Edition& edition) {
    if (const auto image = sizeGiven(context, "image")) {
        edition.imageHeight_mm = image->first;
        edition.imageWidth_mm = image->second;
    }
    if (const auto sheet = sizeGiven(context, "sheet")) {
        edition.sheetHeight_mm = sheet->first;
        edition.sheetWidth_mm = sheet->second;
    }
}

ExitCode run(CommandContext& context) {
    const Arguments& arguments = context.arguments;
    BookFile book = bookToWrite(context);
    Edition edition;
    edition.id = arguments.text("code");
    edition.code = edition.id;
    requireNewId<Edition>(book, edition.id);
    edition.title = arguments.text("title");
    edition.maker = *refGiven<Party>(context, book, "maker");
    edition.printer = refGiven<Party>(context, book, "printer");
    edition.publisher = refGiven<Party>(context, book, "publisher");
    edition.process = arguments.value("process").value_or("relief print");
    edition.year = dateGiven(context, "year");
    edition.paper = arguments.value("paper");
    setSizes(context, edition);
    edition.declaredNumbered = wholeGiven(context, "numbered", "--numbered", 0, 100'000);
    for (const std::string& words : arguments.values("proofs"))
        edition.declaredProofs.push_back(proofsGiven(words));
    edition.statement = arguments.value("statement");
    edition.note = arguments.value("note");
    return recordMade(context, book, {{edition, std::nullopt}});
}

}  // namespace

Command editionCommand() {
    CommandSpec spec;
    spec.name = "edition";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Begin a new edition");
    spec.details =
        "The code is short, stands on labels, and names the edition in every other verb; it is "
        "also the id of the record. What is left out may be added later with rackbook enter.";
    spec.positionals = {{"code", "Short name, of letters, digits and . _ - only."},
                        {"title", "The title as it stands on the prints."}};
    spec.options = {
        required(valueOption("maker", "PARTY", "Id of the party who made the image.")),
        valueOption("printer", "PARTY", "Id of the party who prints it."),
        valueOption("publisher", "PARTY", "Id of the party who publishes it."),
        valueOption("process", "WORDS", "How it is printed, in the trade's words.", "relief print"),
        valueOption("year", "DATE", "The year as well as it is known, such as 2026 or 2025~."),
        valueOption("paper", "WORDS", "Fibre, weight, colour, and what else tells it apart."),
        valueOption("image", "HxW", "Height and width of the image in mm, such as 300x200."),
        valueOption("sheet", "HxW", "Height and width of the sheet in mm."),
        valueOption("numbered", "N", "How many numbered impressions are declared."),
        repeatable(valueOption("proofs", "KIND=N",
                               "Proofs declared beside them: AP=3, BAT=1, PP=2 and so on.")),
        valueOption("statement", "TEXT", "The edition statement, in full."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook edition TIDE \"Spring Tide\" --maker maren --process \"linocut, reduction\" "
         "--image 300x200 --numbered 20 --proofs AP=3 --proofs BAT=1",
         "Begin an edition of 20 with three artist's proofs and the bon à tirer."}};
    return {spec, run};
}

}  // namespace rackbook
