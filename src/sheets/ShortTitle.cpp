#include "sheets/ShortTitle.h"

#include "base/Text.h"

namespace rackbook {

std::string shortTitle(const std::string& title) {
    constexpr std::size_t mostCodePoints = 90;
    const std::size_t end = offsetOfCodePoint(title, mostCodePoints);
    return end < title.size() ? title.substr(0, end) + "…" : title;
}

}  // namespace rackbook
