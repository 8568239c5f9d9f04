#include "commands/Predict.h"

#include "commands/BookAccess.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/PredictPlan.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const ColourModel model = colourModelOf(ink);
    const Prediction prediction =
        predictionOf({context, book, ink, model, asOfDay(context, ink.studio)},
                     context.arguments.text("what"), context.arguments.value("layer"));
    if (context.arguments.has("json")) {
        Tree report = newReport("predict");
        addPrediction(report, ink, prediction);
        context.console.out() << jsonText(report);
    } else {
        printPrediction(context.console, ink, prediction);
    }
    return ExitCode::success;
}

}  // namespace

Command predictCommand() {
    CommandSpec spec;
    spec.name = "predict";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say what colour a mix, a layer, or all layers of an edition should have");
    spec.details =
        "From what the drawdowns teach about the lots in it: the colour over a measured paper at "
        "a film weight, with an estimate of how far it may be off, and, where a colour is recorded "
        "over that paper, how far the prediction is from it. Of an edition: each layer alone over "
        "the paper, and after each layer what it looks like over all before, each dry before the "
        "next.";
    spec.positionals = {
        {"what", "Id of a mix or a layer, or the code of an edition."},
        {"layer", "With an edition: the layer's place in the printing order.", false}};
    spec.options = {
        paperOption(), filmOption(),
        valueOption("on", "DATE", "What the book says of this day.", "today at the studio")};
    spec.reportsJson = true;
    spec.examples = {{"rackbook predict EEL", "Eight layers on one another."},
                     {"rackbook predict eel-l3-letdown --film 5.5", "One mix."}};
    return {spec, run};
}

}  // namespace rackbook
