// The published spectra under tests/calc/facts.
#pragma once

#include <map>
#include <string>

#include "FactRows.h"
#include "calc/Spectrum.h"

namespace rackbook::test {

inline std::map<std::string, Spectrum> factSpectra() {
    std::map<std::string, Spectrum> spectra;
    for (const FactRow& row : factRows("spectral-to-lab-spectra.csv")) {
        Spectrum spectrum{380, 10, {}};
        for (int at_nm = 380; at_nm <= 730; at_nm += 10)
            spectrum.values.push_back(row.number(std::to_string(at_nm)));
        spectra[row.text("sample")] = spectrum;
    }
    return spectra;
}

}  // namespace rackbook::test
