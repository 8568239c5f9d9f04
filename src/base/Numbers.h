// Numbers to and from text, the same in every locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rackbook {

// The whole text as a finite number with a decimal point; nothing otherwise.
std::optional<double> parseNumber(std::string_view text);
std::optional<long long> parseWhole(std::string_view text);

// Fixed decimals: formatFixed(1.5, 2) gives "1.50".
std::string formatFixed(double value, int decimals);

// The fewest digits that read back as the same number; no exponent from 1e-5 to below 1e15.
std::string formatShortest(double value);

// The nearest number of five significant digits: for estimates, of which no more is known. What is
// not finite stays.
double roundedToFive(double value);

}  // namespace rackbook
