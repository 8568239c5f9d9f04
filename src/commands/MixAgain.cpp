#include "commands/MixAgain.h"

#include "commands/BalanceToUse.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/JsonReport.h"
#include "commands/MassGiven.h"
#include "commands/MixAgainPlan.h"
#include "commands/MixAgainReport.h"
#include "commands/OptionRows.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const BalanceToUse balance = balanceToUse(context, "mix-again", ink);
    const MixAgain again = mixAgainAsked(context, "mix-again", {book, ink}, balance);
    if (context.arguments.has("json")) {
        Tree report = newReport("mix-again");
        addMixAgain(report, ink, again);
        context.console.out() << jsonText(report);
    } else {
        printMixAgain(context.console, ink, again, balance.words, balance.capacity_g);
    }
    return again.lacksLots() || !again.weighing.plans.chosen ? ExitCode::findings
                                                             : ExitCode::success;
}

}  // namespace

MixAgain mixAgainAsked(const CommandContext& context, const std::string& verb,
                       const MixAgainBook& from, const BalanceToUse& balance) {
    PlanRequest request;
    request.wanted_g = *massOption(context, verb, "mass");
    request.balance = balance.figures;
    request.limit = colourLimitGiven(context, from.ink.rules);
    const CivilMinute asOf = asOfDay(context, from.ink.studio);
    return mixAgain(from.ink,
                    wantedInkNamed(from.book, from.ink, context.arguments.text("what"),
                                   context.arguments.value("layer")),
                    std::move(request), {asOf - minutesPerDay + 1, asOf});
}

Command mixAgainCommand() {
    CommandSpec spec;
    spec.name = "mix-again";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "How to weigh an ink again, step by step, on the balance that is there");
    spec.details =
        "Takes the recipe of a mix, a pull or a layer back to the tins, through every let-down and "
        "stock mix, and lays out the weighing for the wanted mass: stock mix, let-down and portion "
        "as steps of their own, drier in the last one only. Lots that are used up are replaced by "
        "lots of the same pigments where there are any. Each colour's share is to be known to the "
        "limit, with what rounding to the display does counted in; where the recipe as it stands "
        "cannot be weighed so well, strong colours are let down first or a step is made larger, "
        "and "
        "of all ways the one that leaves least over is shown, with the others below it. Of a "
        "layer, the ink of the pull that printed most good sheets is taken. Exit code 1 where a "
        "lot is missing or too small, or no way of weighing keeps the limit.";
    spec.positionals = {
        {"what", "Id of a mix, a layer or a pull; or the code of an edition, with the layer."},
        {"layer", "Its place in the printing order, such as 4.", false}};
    spec.options = {required(valueOption("mass", "MASS", "How much is wanted: 60 or 60g or 2oz."))};
    for (OptionSpec& option : balanceToUseOptions())
        spec.options.push_back(std::move(option));
    spec.options.push_back(valueOption("on", "DATE", "With the lots that are there on this day.",
                                       "today at the studio"));
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {{"rackbook mix-again EEL 4 --mass 60 --balance kitchen-balance",
                      "60 g of the ink of layer 4."},
                     {"rackbook mix-again eel-stock-reed --mass 25 --readability 0.01",
                      "A stock mix, on a finer balance than the book knows of."}};
    return {spec, run};
}

}  // namespace rackbook
