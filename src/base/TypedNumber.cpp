#include "base/TypedNumber.h"

#include <algorithm>
#include <string>

#include "base/Numbers.h"

namespace rackbook {

std::optional<double> parseTypedNumber(std::string_view text) {
    std::string number(text);
    if (std::count(number.begin(), number.end(), ',') == 1 && number.find('.') == std::string::npos)
        std::replace(number.begin(), number.end(), ',', '.');
    return parseNumber(number);
}

}  // namespace rackbook
