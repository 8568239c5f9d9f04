// Numbers as people type them.
#pragma once

#include <optional>
#include <string_view>

namespace rackbook {

// The whole text as a finite number with a decimal point or a decimal comma; nothing otherwise.
// Nothing stands between thousands: "1,234" is 1.234, and "1.234,5" is no number.
std::optional<double> parseTypedNumber(std::string_view text);

}  // namespace rackbook
