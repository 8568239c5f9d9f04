#include "base/Numbers.h"

#include <charconv>
#include <cmath>

namespace rackbook {

std::optional<double> parseNumber(std::string_view text) {
    double value = 0;
    const char* last = text.data() + text.size();
    const auto [end, error] = std::from_chars(text.data(), last, value);
    if (error != std::errc{} || end != last || !std::isfinite(value))
        return std::nullopt;
    return value;
}

std::optional<long long> parseWhole(std::string_view text) {
    long long value = 0;
    const char* last = text.data() + text.size();
    const auto [end, error] = std::from_chars(text.data(), last, value);
    if (error != std::errc{} || end != last)
        return std::nullopt;
    return value;
}

std::string formatFixed(double value, int decimals) {
    char text[400];
    const auto [end, error] =
        std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, decimals);
    std::string result = error == std::errc{} ? std::string(text, end) : formatShortest(value);
    // A value that rounds to nothing must not read "-0.0".
    if (result.size() > 1 && result[0] == '-' &&
        result.find_first_not_of("0.", 1) == std::string::npos)
        result.erase(0, 1);
    return result;
}

std::string formatShortest(double value) {
    // By itself to_chars takes whichever is shorter, and people do not read 2e+05.
    const double size = std::abs(value);
    const bool isPlain = size >= 1e-5 && size < 1e15;
    char text[64];
    const auto [end, error] =
        isPlain ? std::to_chars(text, text + sizeof text, value, std::chars_format::fixed)
                : std::to_chars(text, text + sizeof text, value);
    return error == std::errc{} ? std::string(text, end) : std::string();
}

double roundedToFive(double value) {
    char text[32];
    const auto [end, error] =
        std::to_chars(text, text + sizeof text, value, std::chars_format::scientific, 4);
    return parseNumber({text, static_cast<std::size_t>(end - text)}).value_or(value);
}

}  // namespace rackbook
