// A reflectance spectrum at even steps, and its values at the wavelengths of the CIE tables.
// Wavelengths in nm, reflectance as a fraction.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/CieTables.h"
#include "records/Reading.h"

namespace rackbook {

struct Spectrum {
    double start_nm = 0;         // a multiple of 5, 300 or more
    double step_nm = 0;          // 5, 10 or 20
    std::vector<double> values;  // 0 … 1.2, from the shortest wavelength

    double wavelength_nm(std::size_t index) const {
        return start_nm + step_nm * static_cast<double>(index);
    }
    double end_nm() const { return values.empty() ? start_nm : wavelength_nm(values.size() - 1); }
};

// Nothing where the reading holds none. What it holds is not checked.
std::optional<Spectrum> spectrumIn(const Reading& reading);

// Throws InputError where steps, range (within 300 … 830 nm, at least 400 … 700 nm) or values are
// not as above; per cent, and per cent mixed with fractions, are told apart from other wrong
// values. A spectrum in per cent that stays below 1.2 % throughout cannot be recognised. `where`
// begins the message.
void requireUsable(const Spectrum& spectrum, const std::string& where = "spectrum");

// The values at the tables' wavelengths: by the cubic through the four nearest points (Lagrange; at
// either end the first or last four), the end values held outside what was measured. Measured
// values stay as they are; values between may pass 0 or 1.2 slightly beside a steep step. With
// steps of 20 nm the CIE test colours come out up to 0.36 in ΔE00 from what steps of 10 nm give;
// narrower bands are further off. Throws as requireUsable.
CieColumn reflectanceOnTable(const Spectrum& spectrum);

}  // namespace rackbook
