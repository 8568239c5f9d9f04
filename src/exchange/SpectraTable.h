// Tables of spectra as CSV.
#pragma once

#include <string_view>

#include "exchange/MeasurementDraft.h"

namespace rackbook {

// The samples of a table with a row for each sample and a column for each wavelength, or a row for
// each wavelength and a column for each sample; see csvRows for the text. What is wrong goes into
// the draft.
void readSpectraTable(std::string_view text, MeasurementDraft& draft);

}  // namespace rackbook
