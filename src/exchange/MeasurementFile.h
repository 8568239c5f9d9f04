// Files of colour measurements: what they hold, whatever their form.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Finding.h"
#include "records/Reading.h"

namespace rackbook {

// CGATS.17 and ISO 28178 text; CxF/X core, ISO 17972-1; a table of spectra as CSV.
enum class MeasurementForm { cgats, cxf3, spectraTable };
const char* nameOf(MeasurementForm form);

// What the values of spectra are in, where somebody says so.
enum class SpectralUnit { fraction, percent };

struct MeasuredXyz {  // Y is 100 for the perfect white
    double x = 0;
    double y = 0;
    double z = 0;
};

struct MeasuredSample {
    std::string name;  // unique in its file
    int line = 0;
    // What the file states, the spectrum as fractions; without id and without what was measured.
    Reading reading;
    std::optional<MeasuredXyz> xyz;
};

struct MeasurementFile {
    MeasurementForm form = MeasurementForm::cgats;
    std::vector<MeasuredSample> samples;  // never empty, in the order of the file
    bool wasPercent = false;              // whether its spectra were in per cent
    std::vector<Finding> notes;           // what was read past
};

// The form is recognised by what the file holds. Spectra are in per cent where the file or `unit`
// says so, or where values pass 1.2; a file in which only some samples do is refused unless it is
// said. Throws RefusedInput with everything that is wrong, and InputError where the file cannot be
// read or is larger than 16 MB (64 MB of XML).
MeasurementFile readMeasurementFile(const std::string& path,
                                    std::optional<SpectralUnit> unit = std::nullopt);

// The same of bytes that are at hand; `file` names them in messages.
MeasurementFile measurementsIn(std::string_view bytes, const std::string& file,
                               std::optional<SpectralUnit> unit = std::nullopt);

}  // namespace rackbook
