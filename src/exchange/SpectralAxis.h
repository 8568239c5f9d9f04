// The wavelengths of a spectrum in a measurement file: which a column's name stands for, and
// whether they can be used. Wavelengths in nm.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/MeasurementFile.h"

namespace rackbook {

struct SpectralAxis {
    double start_nm = 0;
    double step_nm = 0;
    std::size_t count = 0;

    double at_nm(std::size_t index) const {
        return start_nm + step_nm * static_cast<double>(index);
    }
};

struct NamedWavelength {
    double wavelength_nm = 0;
    std::optional<SpectralUnit> unit;  // where the name says it
};

// "380", "380 nm", "nm380", "R380", "SPECTRAL_NM380", "SPECTRAL_NM_380", "SPECTRAL_380",
// "SPECTRAL_PCT_380" (per cent), "SPECTRAL_DEC_380" (fraction), in capitals or not; three digits
// and perhaps decimals. Nothing for any other text. `mayHaveComma`: also "380,0".
std::optional<NamedWavelength> wavelengthNamed(std::string_view text, bool mayHaveComma = false);

// One thing that is wrong with the wavelengths.
struct AxisFault {
    std::string what;
    std::string remedy;
};

// What keeps an axis from being used: it runs evenly every 5, 10 or 20 nm from a multiple of 5,
// within 300 … 830 nm and over 400 … 700 nm at least.
std::vector<AxisFault> faultsOf(const SpectralAxis& axis);

// The axis of wavelengths in rising order. `faults` gets what is wrong with them; nothing comes
// back where they are no axis at all.
std::optional<SpectralAxis> axisThrough(const std::vector<double>& wavelengths_nm,
                                        std::vector<AxisFault>& faults);

}  // namespace rackbook
