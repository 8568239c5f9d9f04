#include "sheets/ReadingText.h"

#include <cmath>

namespace rackbook {

std::string labText(const LabColour& colour, const SheetWords& words) {
    return "L* " + words.figure(colour.lightness, 1) + "  a* " + words.figure(colour.a, 1) +
           "  b* " + words.figure(colour.b, 1);
}

std::string conditionsText(const Reading& reading, const SheetWords& words) {
    std::vector<std::string> parts;
    if (reading.illuminant)
        parts.push_back(textOf(*reading.illuminant));
    if (reading.observer)
        parts.push_back(*reading.observer == Observer::deg2 ? "2°" : "10°");
    if (reading.geometry)
        parts.push_back(*reading.geometry);
    if (reading.condition)
        parts.push_back(textOf(*reading.condition));
    if (reading.backing)
        parts.push_back(
            words.filled("backingNamed", {{"backing", words.of("backing", *reading.backing)}}));
    return parts.empty() ? words("notRecorded") : words.inRow(parts);
}

bool canBeDrawn(const LabColour& colour) {
    constexpr double most = 160;
    return colour.lightness >= 0 && colour.lightness <= 100 && std::abs(colour.a) <= most &&
           std::abs(colour.b) <= most;
}

}  // namespace rackbook
