#include "exchange/LightUnits.h"

#include <array>
#include <regex>
#include <utility>

#include "records/LightLevels.h"

namespace rackbook {

namespace {

constexpr std::array allUnits = {LightUnit::lux, LightUnit::kilolux, LightUnit::wattPerM2,
                                 LightUnit::milliwattPerM2, LightUnit::microwattPerCm2};

void replaceAll(std::string& text, std::string_view part, std::string_view by) {
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += by.size())
        text.replace(at, part.size(), by);
}

// In small letters of ASCII: both µ (U+00B5, U+03BC) as u, ² and ^2 as 2, the minus of ⁻² as -.
std::string plainly(std::string_view words) {
    std::string text(words);
    for (const auto& [part, by] :
         {std::pair("\u00B5", "u"), std::pair("\u03BC", "u"), std::pair("\u00B2", "2"),
          std::pair("\u207B", "-"), std::pair("\u2212", "-"), std::pair("\u00B7", " "),
          std::pair("^", "")})
        replaceAll(text, part, by);
    for (char& c : text)
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
    replaceAll(text, "lux", "lx");
    return text;
}

}  // namespace

const char* nameOf(LightUnit unit) {
    switch (unit) {
        case LightUnit::lux:
            return "lx";
        case LightUnit::kilolux:
            return "klx";
        case LightUnit::wattPerM2:
            return "W/m\u00B2";
        case LightUnit::milliwattPerM2:
            return "mW/m\u00B2";
        case LightUnit::microwattPerCm2:
            break;
    }
    return "\u00B5W/cm\u00B2";
}

const char* nameOf(LightQuantity quantity) {
    return quantity == LightQuantity::illuminance_lx ? "lx" : "W/m\u00B2";
}

std::optional<LightUnit> lightUnitNamed(std::string_view name) {
    for (const LightUnit unit : allUnits)
        if (plainly(nameOf(unit)) == plainly(name))
            return unit;
    return std::nullopt;
}

LightQuantity quantityOf(LightUnit unit) {
    return unit == LightUnit::lux || unit == LightUnit::kilolux ? LightQuantity::illuminance_lx
                                                                : LightQuantity::ultravioletA_Wm2;
}

double inLuxOrWm2(double value, LightUnit unit) {
    switch (unit) {
        case LightUnit::kilolux:
            return value * 1000;
        case LightUnit::milliwattPerM2:
            return value / 1000;
        case LightUnit::microwattPerCm2:
            return value / 100;
        case LightUnit::lux:
        case LightUnit::wattPerM2:
            break;
    }
    return value;
}

double highestPossible(LightQuantity quantity) {
    return quantity == LightQuantity::illuminance_lx ? highestPossible_lx
                                                     : highestPossibleUltravioletA_Wm2;
}

double leastOfLitPlaces(LightQuantity quantity) {
    return quantity == LightQuantity::illuminance_lx ? leastOfLitPlaces_lx
                                                     : leastOfLitPlacesUltravioletA_Wm2;
}

std::optional<std::string> unitWordIn(std::string_view heading) {
    static const std::regex word(
        "(?:^|[^a-z0-9])(?:(k?)(lx)|([kmun]?)(w)(?:[/ ]+(c?m)2|[/ ]*(c?m) ?-2)"
        "|(fc|foot ?-?candles?))(?![a-z0-9])");
    std::smatch found;
    const std::string text = plainly(heading);
    if (!std::regex_search(text, found, word))
        return std::nullopt;
    if (found[2].matched)
        return found.str(1) + "lx";
    if (found[4].matched)
        return found.str(3) + "w/" + found.str(5) + found.str(6) + "2";
    return "fc";
}

}  // namespace rackbook
