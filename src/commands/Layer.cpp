#include "commands/Layer.h"

#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"

namespace rackbook {

namespace {

std::optional<Ref<Block>> blockGiven(const CommandContext& context, const BookFile& book,
                                     const Edition& edition) {
    const std::optional<std::string> id = context.arguments.value("block");
    if (!id)
        return std::nullopt;
    const Block block = recordNamed<Block>(book, *id);
    if (block.edition.id != edition.id)
        throw UsageError("block " + block.id + " belongs to edition " + block.edition.id,
                         "Name a block of edition " + edition.code + ".");
    return Ref<Block>{block.id};
}

ExitCode run(CommandContext& context) {
    const Arguments& arguments = context.arguments;
    BookFile book = bookToWrite(context);
    const Edition edition = editionNamed(book, arguments.text("edition"));
    Layer layer;
    layer.edition = {edition.id};
    layer.ordinal = *wholeGiven(context, "ordinal", "ORDINAL", 1, 1000);
    layer.id = edition.id + "/L" + std::to_string(layer.ordinal);
    requireNewId<Layer>(book, layer.id);
    layer.colourWords = arguments.text("colour");
    layer.block = blockGiven(context, book, edition);
    layer.blockState = wholeGiven(context, "state", "--state", 1, 1000);
    layer.mix = refGiven<Mix>(context, book, "mix");
    layer.coverage = arguments.number("coverage");
    layer.filmWeight_gm2 = arguments.number("film-weight");
    layer.extenderShare = arguments.number("extender-share");
    layer.note = arguments.value("note");
    return recordMade(context, book, {{layer, std::nullopt}});
}

}  // namespace

Command layerCommand() {
    CommandSpec spec;
    spec.name = "layer";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Plan a colour run of an edition");
    spec.details =
        "A layer is one colour run in the printing order. It is planned once and may be pulled on "
        "several days, with several portions of ink.";
    spec.positionals = {{"edition", "Code of the edition."},
                        {"ordinal", "Its place in the printing order; 1 is printed first."},
                        {"colour", "The colour in words."}};
    spec.options = {
        valueOption("block", "BLOCK", "Id of the block it is printed from."),
        valueOption("state", "N", "State of a reduction block, 1 for the first cut."),
        valueOption("mix", "MIX", "Id of the stock mix or let-down it is printed from."),
        valueOption("coverage", "SHARE", "Inked share of the image, 0 to 1."),
        valueOption("film-weight", "GRAMS", "Wet ink aimed at, in grams per square metre."),
        valueOption("extender-share", "SHARE",
                    "Share of extender as remembered, 0 to 1, where nothing was weighed."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook layer EEL 9 \"Lamplight, nearly clear\" --extender-share 0.97",
                      "Plan a ninth layer of the edition EEL."}};
    return {spec, run};
}

}  // namespace rackbook
