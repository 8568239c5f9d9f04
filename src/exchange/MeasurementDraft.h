// What the readers of measurement files build up, and what they found wrong on the way.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "exchange/MeasurementFile.h"
#include "exchange/SpectralAxis.h"

namespace rackbook {

// Where something stands in a measurement file; sample and part may be empty.
struct MeasurementSpot {
    int line = 0;
    std::string sample;
    std::string part;  // "column LAB_L", "at 400 nm"
};

class MeasurementDraft {
public:
    MeasurementDraft(std::string file, MeasurementForm form);

    void refuse(const MeasurementSpot& spot, const std::string& what, const std::string& remedy,
                const std::string& value = {});
    void note(const MeasurementSpot& spot, const std::string& what, const std::string& remedy);
    bool isRefused() const { return !m_refusals.empty(); }
    const std::string& file() const { return m_file; }

    // The number in a cell; refused where it is none. Where `mayHaveComma` a decimal comma is read.
    std::optional<double> number(const MeasurementSpot& spot, const std::string& text,
                                 bool mayHaveComma = false);
    // Refused outside 0 … 100 and −200 … 200.
    void setLab(MeasuredSample& sample, double l, double a, double b);
    // Refused below 0 or above 200.
    void setXyz(MeasuredSample& sample, const MeasuredXyz& xyz);
    // `values` in the order of the axis, in whatever unit the file has; `said` where it tells.
    void setSpectrum(MeasuredSample& sample, const SpectralAxis& axis, std::vector<double> values,
                     std::optional<SpectralUnit> said);

    // Refused where the sample has no name or one that another sample has.
    void add(MeasuredSample sample);

    // Settles what only the whole file shows. Throws RefusedInput.
    MeasurementFile finished(std::optional<SpectralUnit> unit);

private:
    struct Spectrum {
        std::size_t sample = 0;
        SpectralAxis axis;
        std::vector<double> values;
        std::optional<SpectralUnit> said;

        double highest() const;
    };

    void settleSpectra(std::optional<SpectralUnit> unit);
    std::optional<SpectralUnit> recognisedUnit(const std::vector<const Spectrum*>& open);
    bool refuseDarkness(const std::vector<const Spectrum*>& open);
    void refuseMixture(const std::vector<const Spectrum*>& open);
    bool refuseChangeOfUnit(const Spectrum& spectrum);
    void takeSpectrum(const Spectrum& spectrum, SpectralUnit unit);
    void requireScaleOfXyz();

    std::string m_file;
    MeasurementFile m_result;
    std::optional<Spectrum> m_pending;  // of the sample that is added next
    std::vector<Spectrum> m_spectra;
    std::map<std::string, int> m_lineOfName;
    bool m_isFull = false;  // of samples; said once
    std::vector<Finding> m_refusals;
};

}  // namespace rackbook
