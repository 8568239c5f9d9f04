#include "calc/Spectrum.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

constexpr double greatestReflectance = 1.2;
constexpr double greatestPercent = 100 * greatestReflectance;
// No ink's reflectance rises or falls this many times from one point to the next (common practice,
// no source); a change of unit does, a hundred times.
constexpr double unitJump = 25;

std::string nm(double wavelength_nm) {
    return formatShortest(wavelength_nm) + " nm";
}

std::string rangeOf(const Spectrum& spectrum) {
    return "it runs from " + formatShortest(spectrum.start_nm) + " to " + nm(spectrum.end_nm());
}

void requireSteps(const Spectrum& spectrum, const std::string& where) {
    if (spectrum.step_nm != 5 && spectrum.step_nm != 10 && spectrum.step_nm != 20)
        throw InputError(where, "the step is " + nm(spectrum.step_nm),
                         "Give values every 5, 10 or 20 nm.");
    if (!std::isfinite(spectrum.start_nm) || std::fmod(spectrum.start_nm, 5) != 0)
        throw InputError(where, "it starts at " + nm(spectrum.start_nm),
                         "Let it start at a multiple of 5 nm.");
}

void requireRange(const Spectrum& spectrum, const std::string& where) {
    if (spectrum.values.empty())
        throw InputError(where, "it holds no values", "Give at least those from 400 to 700 nm.");
    if (spectrum.start_nm < 300 || spectrum.end_nm() > 830)
        throw InputError(where, rangeOf(spectrum),
                         "Leave out what lies below 300 nm or above 830 nm.");
    if (spectrum.start_nm > 400 || spectrum.end_nm() < 700)
        throw InputError(where, rangeOf(spectrum), "Give at least the values from 400 to 700 nm.");
}

// The first of two neighbours between which the unit seems to change.
std::optional<std::size_t> changeOfUnit(const std::vector<double>& values) {
    for (std::size_t i = 0; i + 1 < values.size(); ++i) {
        const auto [low, high] = std::minmax(values[i], values[i + 1]);
        if (low > 0 && low <= greatestReflectance && high > greatestReflectance &&
            high > unitJump * low)
            return i;
    }
    return std::nullopt;
}

void refusePercent(const Spectrum& spectrum, const std::string& where) {
    const double highest = *std::max_element(spectrum.values.begin(), spectrum.values.end());
    if (highest <= greatestReflectance || highest > greatestPercent)
        return;
    if (const auto at = changeOfUnit(spectrum.values))
        throw InputError(where,
                         "the values at " + formatShortest(spectrum.wavelength_nm(*at)) + " and " +
                             nm(spectrum.wavelength_nm(*at + 1)) + " are " +
                             formatShortest(spectrum.values[*at]) + " and " +
                             formatShortest(spectrum.values[*at + 1]) +
                             ": fractions and per cent seem to be mixed",
                         "Give all of them as fractions, 0 to 1.");
    throw InputError(where,
                     "the values reach " + formatShortest(highest) + " and seem to be per cent",
                     "Divide all of them by 100.");
}

void requireValues(const Spectrum& spectrum, const std::string& where) {
    for (std::size_t i = 0; i < spectrum.values.size(); ++i)
        if (!std::isfinite(spectrum.values[i]))
            throw InputError(where,
                             "the value at " + nm(spectrum.wavelength_nm(i)) + " is not a number",
                             "Give a fraction, 0 to 1.2.");
    refusePercent(spectrum, where);
    for (std::size_t i = 0; i < spectrum.values.size(); ++i)
        if (spectrum.values[i] < 0 || spectrum.values[i] > greatestReflectance)
            throw InputError(where,
                             "the value at " + nm(spectrum.wavelength_nm(i)) + " is " +
                                 formatShortest(spectrum.values[i]),
                             "Give a fraction, 0 to 1.2.");
}

// At `position`, counted in steps from the first value. Pre: four values or more, position within.
double lagrangeAt(const std::vector<double>& values, double position) {
    const double last = static_cast<double>(values.size()) - 4;
    const double first = std::clamp(std::floor(position) - 1, 0.0, last);
    const double t = position - first;
    const double* v = values.data() + static_cast<std::size_t>(first);
    return -v[0] * (t - 1) * (t - 2) * (t - 3) / 6 + v[1] * t * (t - 2) * (t - 3) / 2 -
           v[2] * t * (t - 1) * (t - 3) / 2 + v[3] * t * (t - 1) * (t - 2) / 6;
}

}  // namespace

std::optional<Spectrum> spectrumIn(const Reading& reading) {
    if (reading.spectrum.empty() || !reading.spectrumStart_nm || !reading.spectrumStep_nm)
        return std::nullopt;
    return Spectrum{*reading.spectrumStart_nm, *reading.spectrumStep_nm, reading.spectrum};
}

void requireUsable(const Spectrum& spectrum, const std::string& where) {
    requireSteps(spectrum, where);
    requireRange(spectrum, where);
    requireValues(spectrum, where);
}

CieColumn reflectanceOnTable(const Spectrum& spectrum) {
    requireUsable(spectrum);
    CieColumn column{};
    for (std::size_t i = 0; i < tableSize; ++i) {
        const double at_nm = std::clamp(tableStart_nm + tableStep_nm * static_cast<double>(i),
                                        spectrum.start_nm, spectrum.end_nm());
        column[i] = lagrangeAt(spectrum.values, (at_nm - spectrum.start_nm) / spectrum.step_nm);
    }
    return column;
}

}  // namespace rackbook
