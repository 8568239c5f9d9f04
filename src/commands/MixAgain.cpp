#include "commands/MixAgain.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BalanceGiven.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/JsonReport.h"
#include "commands/MassGiven.h"
#include "commands/MixAgainPlan.h"
#include "commands/MixAgainReport.h"
#include "commands/OptionRows.h"
#include "commands/ShareGiven.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

struct BalanceToUse {
    BalanceFigures figures;
    std::string words;
    std::optional<double> capacity_g;
};

// The figures of --readability and --repeatability, else of a balance of the book.
BalanceToUse balanceToUse(const CommandContext& context, const InkBook& ink) {
    const std::optional<double> readability_g = massOption(context, "mix-again", "readability");
    const std::optional<double> repeatability_g =
        massOption(context, "mix-again", "repeatability", {nullptr, true});
    if (readability_g && context.arguments.has("balance"))
        throw UsageError("--balance and --readability name two balances", "Give one of the two.");
    if (readability_g) {
        constexpr double finest_g = 1e-6;
        constexpr double coarsest_g = 1000;
        if (*readability_g < finest_g || *readability_g > coarsest_g)
            throw UsageError("--readability is " + formatShortest(*readability_g) + " g",
                             "Give the step of its display, 0.000001 to 1000 g.");
        const BalanceFigures figures{*readability_g, repeatability_g.value_or(*readability_g)};
        try {
            requireUsable(figures);
        } catch (const InputError& error) {
            throw UsageError(error);
        }
        const auto shown = [&](double mass_g) {
            return formatFixed(mass_g, decimalsOf({mass_g, 0})) + " g";
        };
        return {figures,
                "a balance in steps of " + shown(*readability_g) + ", " +
                    (repeatability_g ? "repeatable to " + shown(*repeatability_g)
                                     : "taken to repeat to a step (our guess)"),
                std::nullopt};
    }
    if (repeatability_g)
        throw UsageError("--repeatability says nothing without --readability", "Give both.");
    const std::optional<BalanceGiven> given = balanceGiven(context, ink.records);
    if (!given)
        throw UsageError("no balance is recorded",
                         "Give --readability GRAMS, the step of its display, or record it once: "
                         "rackbook enter balance kitchen name=\"Kitchen balance\" "
                         "readability_g=0.1.");
    return {given->figures, balanceWords(given), given->record->capacity_g};
}

double limitGiven(const CommandContext& context, const HouseRules& rules) {
    const std::optional<std::string> text = context.arguments.value("within");
    if (!text)
        return rules.value("colourMostUncertainty");
    const double limit = shareGiven(*text, "--within");
    if (!(limit > 0 && limit < 1))
        throw UsageError("--within is \"" + excerpt(*text) + "\"",
                         "Give a share above 0 and below 1, or per cent as 5%.");
    return limit;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const WantedInk wanted =
        wantedInkNamed(book, ink, context.arguments.text("what"), context.arguments.value("layer"));
    const BalanceToUse balance = balanceToUse(context, ink);
    PlanRequest request;
    request.wanted_g = *massOption(context, "mix-again", "mass");
    request.balance = balance.figures;
    request.limit = limitGiven(context, ink.rules);
    const CivilMinute asOf = asOfDay(context, ink.studio);
    const MixAgain again =
        mixAgain(ink, wanted, std::move(request), {asOf - minutesPerDay + 1, asOf});
    if (context.arguments.has("json")) {
        Tree report = newReport("mix-again");
        addMixAgain(report, ink, again);
        context.console.out() << jsonText(report);
    } else {
        printMixAgain(context.console, ink, again, balance.words, balance.capacity_g);
    }
    return again.lacksLots() || !again.plans.chosen ? ExitCode::findings : ExitCode::success;
}

}  // namespace

Command mixAgainCommand() {
    CommandSpec spec;
    spec.name = "mix-again";
    spec.group = "Questions";
    spec.summary = "How to weigh an ink again, step by step, on the balance that is there";
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
    spec.options = {
        required(valueOption("mass", "MASS", "How much is wanted: 60 or 60g or 2oz.")),
        balanceOption(),
        valueOption("readability", "GRAMS", "The step of the display, for a balance not recorded."),
        valueOption("repeatability", "GRAMS",
                    "Standard deviation of one load weighed many times, for the same."),
        valueOption("within", "SHARE", "How well each colour's share is to be known, such as 5%.",
                    "the house rule colourMostUncertainty"),
        valueOption("on", "DATE", "With the lots that are there on this day.",
                    "today at the studio")};
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {{"rackbook mix-again EEL 4 --mass 60 --balance kitchen-balance",
                      "60 g of the ink of layer 4."},
                     {"rackbook mix-again eel-stock-reed --mass 25 --readability 0.01",
                      "A stock mix, on a finer balance than the book knows of."}};
    return {spec, run};
}

}  // namespace rackbook
