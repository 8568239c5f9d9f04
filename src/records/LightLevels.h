// Levels of light between which a lit place lies.
#pragma once

namespace rackbook {

// What no light on Earth passes: full sun with bright clouds stays below about 150,000 lx, and has
// about 60 to 70 W/m² of UV-A. Common practice, no source.
constexpr double highestPossible_lx = 200'000;
constexpr double highestPossibleUltravioletA_Wm2 = 120;

// What a lit place passes at some time of a day. Common practice, no source.
constexpr double leastOfLitPlaces_lx = 1;
constexpr double leastOfLitPlacesUltravioletA_Wm2 = 0.0001;

}  // namespace rackbook
