#include "commands/HowMuch.h"

#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/HowMuchPlan.h"
#include "commands/HowMuchReport.h"
#include "commands/JsonReport.h"
#include "commands/LayerNamed.h"
#include "commands/OptionRows.h"
#include "commands/ShareGiven.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr int mostSheets = 100'000;

InkWanted wantedIn(const CommandContext& context, const BookFile& book, const InkBook& ink) {
    const Arguments& arguments = context.arguments;
    const Edition edition = editionNamed(book, arguments.text("edition"));
    InkWanted wanted;
    wanted.edition = edition.id;
    wanted.all = arguments.has("all");
    wanted.aimed = arguments.has("aimed");
    if (const std::optional<std::string> layer = arguments.value("layer"))
        wanted.layer = ink.records.indexOf<Layer>(layerOf(book, edition, *layer).id);
    if (wanted.layer && wanted.all)
        throw UsageError("one layer is named, and --all asks for every one",
                         "Leave out one of the two.");
    wanted.sheets = wholeGiven(context, "sheets", "--sheets", 1, mostSheets);
    if (const std::optional<std::string> spoil = arguments.value("spoil"))
        wanted.spoilShare = markupGiven(*spoil, "--spoil");
    if (const std::optional<std::string> weight = arguments.value("film-weight"))
        wanted.weight_gm2 =
            positiveGiven(*weight, "--film-weight", "Give g of ink on a m², such as 6.5.");
    if (wanted.aimed && wanted.weight_gm2)
        throw UsageError("--aimed and --film-weight cannot both be kept to",
                         "Leave out one of the two.");
    return wanted;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const HowMuch much = howMuch(ink, wantedIn(context, book, ink), nowAt(ink.studio).latest());
    if (context.arguments.has("json")) {
        Tree report = newReport("how-much");
        addHowMuch(report, ink, much);
        context.console.out() << jsonText(report);
    } else {
        printHowMuch(context.console, ink, much);
    }
    return ExitCode::success;
}

}  // namespace

Command howMuchCommand() {
    CommandSpec spec;
    spec.name = "how-much";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate("summary", "How much ink layers need, and of which mixes");
    spec.details =
        "Image area, times the inked part of it, times sheets and spoils, times the film weight: "
        "the ink that has to be put out. Without LAYER these are the layers that were not pulled "
        "at all yet. Sheets are those declared, numbered and proofs; where none are declared, "
        "those kept of the first layer. The film weight is learnt from pulls with the ink weighed "
        "before and after: three or more of the layer, else of the edition, else of the whole "
        "book; where there are fewer, the layer's aim or a range from common practice stands in. "
        "Below the layers stands how much of each mix that comes to, through the let-downs.";
    spec.positionals = {{"edition", "Code of the edition."},
                        {"layer", "Its place in the printing order, such as 3.", false}};
    spec.options = {
        flagOption("all", "Every layer, also those that were pulled."),
        valueOption("sheets", "NUMBER", "Good sheets that are wanted.", "as declared"),
        valueOption("spoil", "SHARE", "Sheets on top, because some are spoiled, such as 10%.",
                    "the house rule spoilShare"),
        valueOption("film-weight", "NUMBER", "Wet, in g on a m² of inked area, such as 6.5.",
                    "learnt"),
        flagOption("aimed",
                   "Reckon with the film weight that the layer aims at, where it has one.")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook how-much EEL --all", "All layers of an edition again."},
                     {"rackbook how-much EEL 4 --sheets 12 --spoil 20%",
                      "One layer on twelve more sheets, with many spoils."}};
    return {spec, run};
}

}  // namespace rackbook
