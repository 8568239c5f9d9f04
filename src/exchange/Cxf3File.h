// Measurements as CxF/X core (ISO 17972-1), the XML of namespace
// http://colorexchangeformat.com/CxF3-core.
#pragma once

#include <string_view>

#include "exchange/MeasurementDraft.h"

namespace rackbook {

// Objects with ReflectanceSpectrum, ColorCIELab or ColorCIEXYZ (Y of a perfect white 100, as its
// schema has it) under ColorValues, with what their ColorSpecification says; other objects are left
// aside. A sample goes by the Name of its object, or by its Id where it has no name or shares it.
// What is wrong goes into the draft. Documents with a DTD are refused, so that no entity is ever
// expanded.
void readCxf3(std::string_view bytes, MeasurementDraft& draft);

}  // namespace rackbook
