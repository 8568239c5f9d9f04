#include "exchange/SpectralAxis.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/MeasurementWords.h"

namespace rackbook {

namespace {

// Written steps such as 3.33 are not meant: two wavelengths closer than this are the same.
constexpr double nearEnough_nm = 1e-6;
constexpr double steps_nm[] = {5, 10, 20};

struct Prefix {
    std::string_view text;
    std::optional<SpectralUnit> unit;
};
// The longer before the shorter that they begin with. SPECTRAL_NM, SPECTRAL_PCT and SPECTRAL_DEC
// are of CGATS.17; the wavelength behind them, and nm380 and R380, are what files are found to
// have (common practice, no standard).
const Prefix prefixes[] = {{"SPECTRAL_NM", {}},
                           {"SPECTRAL_PCT", SpectralUnit::percent},
                           {"SPECTRAL_DEC", SpectralUnit::fraction},
                           {"SPECTRAL", {}},
                           {"NM", {}},
                           {"R", {}}};

std::string nm(double wavelength_nm) {
    return formatShortest(wavelength_nm) + " nm";
}

std::string inCapitals(std::string_view text) {
    std::string capitals;
    for (const char c : text)
        capitals += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    return capitals;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// Three digits, then perhaps a point and more digits.
std::optional<double> threeDigits(std::string text, bool mayHaveComma) {
    if (mayHaveComma)
        std::replace(text.begin(), text.end(), ',', '.');
    const bool begins = text.size() >= 3 && std::all_of(text.begin(), text.begin() + 3, isDigit);
    if (!begins || (text.size() > 3 && text[3] != '.'))
        return std::nullopt;
    return parseNumber(text);
}

bool isTaken(double step_nm) {
    return std::any_of(std::begin(steps_nm), std::end(steps_nm),
                       [&](double taken) { return std::abs(step_nm - taken) < nearEnough_nm; });
}

// The wavelengths that are left out, were the steps even.
std::vector<std::string> missingFrom(const std::vector<double>& wavelengths_nm, double step_nm) {
    constexpr std::size_t most = 5;
    std::vector<std::string> missing;
    for (std::size_t i = 0; i + 1 < wavelengths_nm.size(); ++i)
        for (double at = wavelengths_nm[i] + step_nm; at < wavelengths_nm[i + 1] - nearEnough_nm;
             at += step_nm) {
            if (missing.size() == most) {
                missing.push_back("more");
                return missing;
            }
            missing.push_back(formatShortest(at));
        }
    return missing;
}

AxisFault unevenness(const std::vector<double>& wavelengths_nm, double step_nm) {
    if (isTaken(step_nm))
        return {"the steps are not even: there is no value at " +
                    joined(missingFrom(wavelengths_nm, step_nm)) + " nm",
                "Give every wavelength from the first to the last."};
    return {"the steps are not even: the smallest is " + nm(step_nm),
            "Give values every 5, 10 or 20 nm."};
}

}  // namespace

std::optional<NamedWavelength> wavelengthNamed(std::string_view text, bool mayHaveComma) {
    std::string rest = trimmed(inCapitals(text));
    NamedWavelength named;
    const bool begins = rest.empty() || !isDigit(rest[0]);
    for (const Prefix& prefix : prefixes) {
        if (!begins || rest.compare(0, prefix.text.size(), prefix.text) != 0)
            continue;
        named.unit = prefix.unit;
        rest.erase(0, prefix.text.size());
        if (!rest.empty() && (rest[0] == '_' || rest[0] == ' '))
            rest.erase(0, 1);
        break;
    }
    if (rest.size() > 2 && rest.compare(rest.size() - 2, 2, "NM") == 0)
        rest = trimmed(rest.substr(0, rest.size() - 2));
    const std::optional<double> wavelength = threeDigits(rest, mayHaveComma);
    if (!wavelength)
        return std::nullopt;
    named.wavelength_nm = *wavelength;
    return named;
}

std::vector<AxisFault> faultsOf(const SpectralAxis& axis) {
    std::vector<AxisFault> faults;
    if (!isTaken(axis.step_nm))
        faults.push_back({"the step is " + nm(axis.step_nm), "Give values every 5, 10 or 20 nm."});
    if (std::fmod(axis.start_nm, 5) != 0)
        faults.push_back(
            {"the spectrum starts at " + nm(axis.start_nm), "Let it start at a multiple of 5 nm."});
    const double end_nm = axis.count == 0 ? axis.start_nm : axis.at_nm(axis.count - 1);
    const std::string runs =
        "the spectrum runs from " + formatShortest(axis.start_nm) + " to " + nm(end_nm);
    if (axis.start_nm < 300 || end_nm > 830)
        faults.push_back({runs, "Leave out what lies below 300 nm or above 830 nm."});
    if (axis.start_nm > 400 || end_nm < 700)
        faults.push_back({runs, "Give at least the values from 400 to 700 nm."});
    return faults;
}

std::optional<SpectralAxis> axisThrough(const std::vector<double>& wavelengths_nm,
                                        std::vector<AxisFault>& faults) {
    if (wavelengths_nm.size() < 2) {
        faults.push_back({"a spectrum has more than one wavelength",
                          "Give at least the values from 400 to 700 nm."});
        return std::nullopt;
    }
    double smallest = wavelengths_nm[1] - wavelengths_nm[0];
    double widest = smallest;
    for (std::size_t i = 1; i < wavelengths_nm.size(); ++i) {
        const double step_nm = wavelengths_nm[i] - wavelengths_nm[i - 1];
        smallest = std::min(smallest, step_nm);
        widest = std::max(widest, step_nm);
        if (step_nm < nearEnough_nm) {
            faults.push_back({"the wavelength " + nm(wavelengths_nm[i]) + " is there twice",
                              "Leave one of the two out."});
            return std::nullopt;
        }
    }
    if (widest - smallest > nearEnough_nm) {
        faults.push_back(unevenness(wavelengths_nm, smallest));
        return std::nullopt;
    }
    const SpectralAxis axis{wavelengths_nm.front(), std::round(smallest * 1e6) / 1e6,
                            wavelengths_nm.size()};
    for (AxisFault& fault : faultsOf(axis))
        faults.push_back(std::move(fault));
    return axis;
}

}  // namespace rackbook
