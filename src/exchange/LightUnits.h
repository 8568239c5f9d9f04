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

// What no light on Earth passes: 200,000 lx (full sun with bright clouds stays below about 150,000)
// and 120 W/m² UV-A (full sun has about 60 to 70). Common practice, no source.
double highestPossible(LightQuantity quantity);

// What a lit place passes at some time of a day: 1 lx, 0.0001 W/m². Common practice, no source.
double leastOfLitPlaces(LightQuantity quantity);

// A unit of light in the words of a heading, plainly written ("uw/cm2", "lx", "fc"): also one that
// is not among those above. Nothing where none is named.
std::optional<std::string> unitWordIn(std::string_view heading);

}  // namespace rackbook
