#include "calc/ReadingColour.h"

#include "base/Error.h"
#include "records/EnumText.h"

namespace rackbook {

namespace {

std::optional<Lab> typedIn(const Reading& reading) {
    if (!reading.labL || !reading.labA || !reading.labB)
        return std::nullopt;
    return Lab{*reading.labL, *reading.labA, *reading.labB};
}

ViewingLight lightOf(const Reading& reading) {
    return viewingLightOf(reading.illuminant.value_or(Illuminant::D50));
}

Observer observerOf(const Reading& reading) {
    return reading.observer.value_or(Observer::deg2);
}

std::optional<Lab> computedFrom(const Reading& reading, ViewingLight light, Observer observer) {
    const std::optional<Spectrum> spectrum = spectrumIn(reading);
    if (!spectrum)
        return std::nullopt;
    requireUsable(*spectrum, "reading " + reading.id);
    return labOf(*spectrum, light, observer);
}

std::string stated(const std::optional<std::string>& value) {
    return value.value_or("not stated");
}

template <class E>
std::string stated(const std::optional<E>& value) {
    return value ? textOf(*value) : "not stated";
}

}  // namespace

std::optional<ReadingColour> colourOf(const Reading& reading, ViewingLight light,
                                      Observer observer) {
    if (const std::optional<Lab> computed = computedFrom(reading, light, observer))
        return ReadingColour{*computed, false};
    const std::optional<Lab> typed = typedIn(reading);
    if (!typed || lightOf(reading) != light || observerOf(reading) != observer)
        return std::nullopt;
    return ReadingColour{*typed, true};
}

std::optional<double> typedAgainstSpectrum(const Reading& reading) {
    const std::optional<Lab> typed = typedIn(reading);
    const std::optional<Lab> computed =
        computedFrom(reading, lightOf(reading), observerOf(reading));
    return typed && computed ? std::optional(deltaE00(*typed, *computed)) : std::nullopt;
}

std::vector<std::string> unlikeConditions(const Reading& first, const Reading& second) {
    std::vector<std::string> unlike;
    const auto compare = [&](const char* name, const auto& a, const auto& b) {
        if (a != b)
            unlike.push_back(std::string(name) + " (" + stated(a) + " and " + stated(b) + ")");
    };
    compare("condition", first.condition, second.condition);
    compare("backing", first.backing, second.backing);
    compare("geometry", first.geometry, second.geometry);
    compare("instrument", first.instrument, second.instrument);
    return unlike;
}

}  // namespace rackbook
