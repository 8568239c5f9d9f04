// Measurements as CGATS.17 text, which is ISO 28178 text too.
#pragma once

#include <string_view>

#include "exchange/MeasurementDraft.h"

namespace rackbook {

// All tables of the file. Columns: SAMPLE_NAME, else SAMPLE_ID, else SAMPLE_LOC for the sample's
// name; LAB_L, LAB_A and LAB_B; XYZ_X, XYZ_Y and XYZ_Z; a column for each wavelength, see
// wavelengthNamed. The colour library judges the grammar; what is wrong goes into the draft. No
// other file is opened, whatever the text says.
void readCgats(std::string_view text, MeasurementDraft& draft);

}  // namespace rackbook
