#include "commands/MassGiven.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"

namespace rackbook {

const char* const massHelp =
    "A mass is a number with a decimal point or a decimal comma, in grams, or with its unit behind "
    "it: 4.5, 4,5g, 0.05kg, 250mg, 1oz (avoirdupois, 28.349523125 g), or 5ml where the density of "
    "the lot is recorded. Nothing stands between thousands: 1,234 is a little more than one gram.";

namespace {

// The avoirdupois ounce, exactly: NIST Handbook 44, appendix C (a pound of 453.59237 g has 16).
constexpr double ounce_g = 28.349523125;

struct Typed {
    std::string number;
    std::string unit;
};

Typed takenApart(const std::string& text) {
    const std::size_t last = text.find_last_of("0123456789.,");
    const std::size_t end = last == std::string::npos ? 0 : last + 1;
    std::string unit = text.substr(end);
    unit.erase(0, unit.find_first_not_of(' '));
    return {text.substr(0, end), unit};
}

// Digits with at most one decimal point, and a sign.
std::optional<std::string> withPoint(std::string number) {
    if (number.find_first_not_of("0123456789.,", number[0] == '-' ? 1 : 0) != std::string::npos ||
        std::count_if(number.begin(), number.end(), [](char c) { return c == '.' || c == ','; }) >
            1)
        return std::nullopt;
    std::replace(number.begin(), number.end(), ',', '.');
    return number;
}

[[noreturn]] void refuse(const std::string& text, const std::string& label) {
    throw UsageError(
        label + " is \"" + excerpt(text) + "\", which is no mass",
        "Write a number with one decimal point or comma and nothing between thousands, and the "
        "unit behind it, such as 4.5 or 4,5g.");
}

double densityOf(const std::string& text, const std::string& label, const MassTerms& terms) {
    if (!terms.lot)
        throw UsageError(label + " is \"" + excerpt(text) + "\", a volume",
                         "Give the mass in g: only what comes straight from a lot can be given in "
                         "ml, by the lot's density.");
    if (!terms.lot->density_gml)
        throw UsageError(
            label + " is \"" + excerpt(text) + "\", a volume, and the density of lot " +
                terms.lot->id + " is not recorded",
            "Give the mass in g, or record first what a ml of it weighs, with rackbook "
            "enter lot " +
                terms.lot->id + " density_gml=1.2 --reason \"weighed 10 ml\".");
    return *terms.lot->density_gml;
}

// The exponent goes into the text, so that 4.35 kg is 4350 g to the last digit.
std::optional<double> inGrams(const std::string& text, const Typed& typed, const std::string& label,
                              const MassTerms& terms) {
    const std::optional<std::string> number = withPoint(typed.number);
    if (!number)
        return std::nullopt;
    if (typed.unit == "kg")
        return parseNumber(*number + "e3");
    if (typed.unit == "mg")
        return parseNumber(*number + "e-3");
    std::optional<double> value = parseNumber(*number);
    if (!value || typed.unit.empty() || typed.unit == "g")
        return value;
    if (typed.unit == "oz")
        return *value * ounce_g;
    if (typed.unit == "ml" || typed.unit == "mL")
        return *value * densityOf(text, label, terms);
    throw UsageError(label + " is \"" + excerpt(text) + "\", and \"" + excerpt(typed.unit) +
                         "\" is no unit of mass known here",
                     "Give it in g, kg, mg or oz, or in ml where the density of the lot is "
                     "recorded.");
}

}  // namespace

double massGiven(const std::string& text, const std::string& label, const MassTerms& terms) {
    const Typed typed = takenApart(text);
    if (typed.number.empty())
        refuse(text, label);
    const std::optional<double> mass_g = inGrams(text, typed, label, terms);
    if (!mass_g || !std::isfinite(*mass_g))
        refuse(text, label);
    if (*mass_g < 0 || (*mass_g == 0 && !terms.mayBeNothing))
        throw UsageError(
            label + " is \"" + excerpt(text) + "\"",
            terms.mayBeNothing ? "Give a mass of 0 g or more." : "Give a mass above 0 g.");
    // What units and densities leave behind the ninth decimal is no mass that was weighed.
    return std::round(*mass_g * 1e9) / 1e9;
}

std::optional<double> massOption(const Arguments& arguments, const std::string& verb,
                                 const std::string& option, const MassTerms& terms) {
    const std::optional<std::string> text = arguments.value(option);
    return text ? std::optional(massGiven(*text, verb + ": --" + option, terms)) : std::nullopt;
}

std::optional<double> massOption(const CommandContext& context, const std::string& verb,
                                 const std::string& option, const MassTerms& terms) {
    return massOption(context.arguments, verb, option, terms);
}

}  // namespace rackbook
