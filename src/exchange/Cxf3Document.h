// What is read of a CxF/X core document, as it stands there.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/MeasurementDraft.h"

namespace rackbook {

struct Cxf3Values {
    int line = 0;
    std::string element;        // "ReflectanceSpectrum", "ColorCIELab", "ColorCIEXYZ"
    std::string specification;  // Id of a ColorSpecification; may be empty
    std::string start_nm;       // attribute StartWL of a spectrum; may be empty
    std::string measuredAt;     // attribute MeasureDate; may be empty
    std::vector<std::string> numbers;
};

struct Cxf3Object {
    int line = 0;
    std::string name;
    std::string id;
    std::string createdAt;
    std::vector<Cxf3Values> values;
};

// The texts of a ColorSpecification by their path, as "MeasurementSpec/Device/Model"; attributes
// as "MeasurementSpec/WavelengthRange@StartWL".
struct Cxf3Specification {
    std::map<std::string, std::string> texts;

    std::optional<std::string> text(const std::string& path) const;
};

struct Cxf3Document {
    std::vector<Cxf3Object> objects;  // those with colour values
    std::map<std::string, Cxf3Specification> specifications;
};

// What is wrong with the XML itself goes into the draft.
Cxf3Document cxf3Document(std::string_view bytes, MeasurementDraft& draft);

}  // namespace rackbook
