#include "commands/PutRight.h"

#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/JsonReport.h"
#include "commands/MassGiven.h"
#include "commands/OptionRows.h"
#include "commands/PutRightPlan.h"
#include "commands/PutRightReport.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

RecipeGiven recipeGiven(const CommandContext& context, const InkBook& ink) {
    const std::optional<std::string> mix = context.arguments.value("mix");
    if (mix && context.arguments.has("recipe"))
        throw UsageError("the recipe is given twice, as mix " + excerpt(*mix) + " and in --recipe",
                         "Leave out one of the two.");
    if (mix)
        return recipeOfMix(ink, *mix);
    if (!context.arguments.has("recipe"))
        throw UsageError("it is not said what the ink was to be",
                         "Name a mix of the book, or give its shares with --recipe SOURCE=SHARE.");
    return recipeTyped(ink, context.arguments.values("recipe"));
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const RecipeGiven recipe = recipeGiven(context, ink);
    const std::vector<InDish> dish = dishTyped(ink, context.arguments.values("in"));
    const std::optional<double> wanted_g = massOption(context, "put-right", "wanted");
    const std::optional<BalanceGiven> balance = balanceGiven(context, ink.records);
    const PutRight plan =
        putRight(ink, recipe, dish, wanted_g, balance, nowAt(ink.studio).latest());
    if (context.arguments.has("json")) {
        Tree report = newReport("put-right");
        addPutRight(report, ink, plan, balance);
        context.console.out() << jsonText(report);
    } else {
        printPutRight(context.console, ink, plan, balance);
    }
    return plan.correction.isPossible() ? ExitCode::success : ExitCode::findings;
}

}  // namespace

Command putRightCommand() {
    CommandSpec spec;
    spec.name = "put-right";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate(
        "summary", "Too much of something went into the dish: what to add of everything else");
    spec.details =
        "Nothing comes out of a dish again, so the rest is raised to what there is too much of. "
        "Says how much of each to add, in weighing order, what that comes to, whether there is "
        "enough left of everything, and whether a fresh batch takes less ink. The recipe is that "
        "of a mix as it was weighed, from the lots and mixes that went straight into it, or one "
        "given by its shares. Nothing is recorded. Exit code 1 where it cannot be put right.\n\n" +
        std::string(massHelp);
    spec.positionals = {
        {"mix", "Id of the mix whose recipe it was to be; left out with --recipe.", false}};
    spec.options = {
        required(repeatable(valueOption("in", "SOURCE=MASS",
                                        "What is in the dish: id of a lot or mix (lot:ID or mix:ID "
                                        "where both bear it), and its mass."))),
        repeatable(
            valueOption("recipe", "SOURCE=SHARE",
                        "The recipe instead, such as rose=3%; all of them add up to 100 %.")),
        valueOption("wanted", "MASS", "How much ink is wanted at least."), balanceOption()};
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook put-right eel-l4-letdown --in eel-stock-straw=1.8 --in eel-stock-rose=0.65 "
         "--wanted 60 --balance pocket-balance",
         "Too much of the first, and no base in yet."},
        {"rackbook put-right --recipe base-2=97% --recipe field-rose-1=3% --in base-2=40 --in "
         "field-rose-1=1,5g --balance kitchen-balance",
         "A recipe that is not in the book."}};
    return {spec, run};
}

}  // namespace rackbook
