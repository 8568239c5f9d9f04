// Units that loggers give light in.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rackbook {

// Of illuminance the first two, of UV-A irradiance the others.
enum class LightUnit { lux, kilolux, wattPerM2, milliwattPerM2, microwattPerCm2 };

enum class LightQuantity { illuminance_lx, ultravioletA_Wm2 };

const char* nameOf(LightUnit unit);          // "lx", "klx", "W/m²", "mW/m²", "µW/cm²"
const char* nameOf(LightQuantity quantity);  // "lx", "W/m²"

// By its name, also with u for µ, 2 for ² and "lux" for lx; capitals of lx do not matter.
std::optional<LightUnit> lightUnitNamed(std::string_view name);

LightQuantity quantityOf(LightUnit unit);

// In lx or W/m². Pre: finite.
double inLuxOrWm2(double value, LightUnit unit);

// What no light on Earth passes, in lx or W/m².
double highestPossible(LightQuantity quantity);

// What a lit place passes at some time of a day, in lx or W/m².
double leastOfLitPlaces(LightQuantity quantity);

// A unit of light in the words of a heading, plainly written ("uw/cm2", "lx", "fc"): also one that
// is not among those above. Nothing where none is named.
std::optional<std::string> unitWordIn(std::string_view heading);

}  // namespace rackbook
