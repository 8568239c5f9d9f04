#include "commands/GivenValues.h"

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BookAccess.h"

namespace rackbook {

namespace {

bool isClockTime(const std::string& text) {
    const auto digit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
    return text.size() == 5 && digit(0) && digit(1) && text[2] == ':' && digit(3) && digit(4);
}

}  // namespace

EdtfDate dateFrom(const std::string& text, const std::string& option) {
    try {
        return EdtfDate::parse(text, "--" + option);
    } catch (const InputError& error) {
        throw UsageError(error);
    }
}

std::optional<EdtfDate> dateGiven(const CommandContext& context, const std::string& option) {
    const std::optional<std::string> text = context.arguments.value(option);
    return text ? std::optional(dateFrom(*text, option)) : std::nullopt;
}

std::optional<EdtfDate> momentGiven(const CommandContext& context, const Book& studio,
                                    const std::string& option) {
    return momentGivenOn(context, nowAt(studio).earliest(), option);
}

std::string withDay(const std::string& text, CivilMinute day) {
    return isClockTime(text) ? formatDay(day) + "T" + text : text;
}

std::optional<EdtfDate> momentGivenOn(const CommandContext& context, CivilMinute day,
                                      const std::string& option) {
    const std::optional<std::string> text = context.arguments.value(option);
    return text ? std::optional(dateFrom(withDay(*text, day), option)) : std::nullopt;
}

EdtfDate momentGivenOrNow(const CommandContext& context, const Book& studio,
                          const std::string& option) {
    const std::optional<EdtfDate> given = momentGiven(context, studio, option);
    return given ? *given : nowAt(studio);
}

EdtfDate dayIn(const EdtfDate& date) {
    return date.hasTime() && !date.isInterval() ? EdtfDate::ofDay(date.earliest()) : date;
}

std::optional<int> wholeGiven(const CommandContext& context, const std::string& name,
                              const std::string& label, int least, int most) {
    const std::optional<long long> given = context.arguments.whole(name);
    if (!given)
        return std::nullopt;
    if (*given < least || *given > most)
        throw UsageError(label + " is " + std::to_string(*given),
                         "Give a whole number from " + std::to_string(least) + " to " +
                             std::to_string(most) + ".");
    return static_cast<int>(*given);
}

std::optional<std::pair<double, double>> sizeGiven(const CommandContext& context,
                                                   const std::string& option) {
    const std::optional<std::string> text = context.arguments.value(option);
    if (!text)
        return std::nullopt;
    const std::size_t sign = text->find('x');
    if (sign != std::string::npos) {
        const std::optional<double> height = parseNumber(text->substr(0, sign));
        const std::optional<double> width = parseNumber(text->substr(sign + 1));
        if (height && width)
            return std::pair(*height, *width);
    }
    throw UsageError("--" + option + " is \"" + excerpt(*text) + "\", which is no size",
                     "Write height x width in mm without spaces, such as 300x200.");
}

}  // namespace rackbook
