#include "calc/PercentText.h"

#include <cmath>

#include "base/Numbers.h"

namespace rackbook {

std::string percentText(double share) {
    if (!std::isfinite(share))
        return formatShortest(share) + " %";
    std::string text = formatFixed(100 * share, 8);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text.pop_back();
    return text + " %";
}

}  // namespace rackbook
