#include "commands/BalanceToUse.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BalanceGiven.h"
#include "commands/MassGiven.h"
#include "commands/OptionRows.h"
#include "commands/ShareGiven.h"

namespace rackbook {

std::vector<OptionSpec> balanceToUseOptions() {
    return {
        balanceOption(),
        valueOption("readability", "GRAMS", "The step of the display, for a balance not recorded."),
        valueOption("repeatability", "GRAMS",
                    "Standard deviation of one load weighed many times, for the same."),
        valueOption("within", "SHARE", "How well each colour's share is to be known, such as 5%.",
                    "the house rule colourMostUncertainty")};
}

BalanceToUse balanceToUse(const CommandContext& context, const std::string& verb,
                          const InkBook& ink) {
    return balanceToUse(context.arguments, verb, ink);
}

BalanceToUse balanceToUse(const Arguments& arguments, const std::string& verb, const InkBook& ink) {
    const std::optional<double> readability_g = massOption(arguments, verb, "readability");
    const std::optional<double> repeatability_g =
        massOption(arguments, verb, "repeatability", {nullptr, true});
    if (readability_g && arguments.has("balance"))
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
                {},
                !repeatability_g,
                std::nullopt};
    }
    if (repeatability_g)
        throw UsageError("--repeatability says nothing without --readability", "Give both.");
    const std::optional<BalanceGiven> given = balanceGiven(arguments, ink.records);
    if (!given)
        throw UsageError("no balance is recorded",
                         "Give --readability GRAMS, the step of its display, or record it once: "
                         "rackbook enter balance kitchen name=\"Kitchen balance\" "
                         "readability_g=0.1.");
    return {given->figures, balanceWords(given), given->record->name, given->repeatabilityAssumed,
            given->record->capacity_g};
}

double colourLimitGiven(const CommandContext& context, const HouseRules& rules) {
    return colourLimitGiven(context.arguments, rules);
}

double colourLimitGiven(const Arguments& arguments, const HouseRules& rules) {
    const std::optional<std::string> text = arguments.value("within");
    if (!text)
        return rules.value("colourMostUncertainty");
    const double limit = shareGiven(*text, "--within");
    if (!(limit > 0 && limit < 1))
        throw UsageError("--within is \"" + excerpt(*text) + "\"",
                         "Give a share above 0 and below 1, or per cent as 5%.");
    return limit;
}

}  // namespace rackbook
