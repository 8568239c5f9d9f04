// Building measurement files for tests, and reading them back.
#pragma once

#include <string>
#include <vector>

#include "base/Numbers.h"
#include "exchange/MeasurementFile.h"
#include "support/MessageOf.h"

namespace rackbook::test {

// What a text is refused with; says so where it is not.
inline std::string refusalOfText(const std::string& text,
                                 std::optional<SpectralUnit> unit = std::nullopt) {
    return messageOf([&] { measurementsIn(text, "m", unit); });
}

inline std::string firstLineOf(const std::string& text) {
    return text.substr(0, text.find('\n'));
}

inline std::string joinedBy(const std::vector<std::string>& parts, const std::string& separator) {
    std::string text;
    for (const std::string& part : parts)
        text += (text.empty() ? "" : separator) + part;
    return text;
}

inline std::vector<std::string> wavelengthTexts(int from_nm, int to_nm, int step_nm,
                                                const std::string& before = {}) {
    std::vector<std::string> texts;
    for (int at_nm = from_nm; at_nm <= to_nm; at_nm += step_nm)
        texts.push_back(before + std::to_string(at_nm));
    return texts;
}

// A CGATS.17 text with one table. `sets` is what NUMBER_OF_SETS says.
inline std::string cgatsText(const std::vector<std::string>& columns,
                             const std::vector<std::vector<std::string>>& rows,
                             const std::string& header = {}, int sets = -1) {
    std::string text =
        "CGATS.17\n" + header + "NUMBER_OF_FIELDS " + std::to_string(columns.size()) +
        "\nBEGIN_DATA_FORMAT\n" + joinedBy(columns, "\t") + "\nEND_DATA_FORMAT\nNUMBER_OF_SETS " +
        std::to_string(sets < 0 ? static_cast<int>(rows.size()) : sets) + "\nBEGIN_DATA\n";
    for (const std::vector<std::string>& row : rows)
        text += joinedBy(row, "\t") + "\n";
    return text + "END_DATA\n";
}

inline const char* const cxfBeginning =
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
    "<cc:CxF xmlns:cc=\"http://colorexchangeformat.com/CxF3-core\">\n";

// One object a line from line 4 on, then the specifications.
inline std::string cxfText(const std::string& objects, const std::string& specifications = {}) {
    return std::string(cxfBeginning) + "<cc:Resources><cc:ObjectCollection>\n" + objects +
           "</cc:ObjectCollection>\n<cc:ColorSpecificationCollection>" + specifications +
           "</cc:ColorSpecificationCollection></cc:Resources>\n</cc:CxF>\n";
}

inline std::string cxfObject(const std::string& name, const std::string& id,
                             const std::string& values) {
    return "<cc:Object ObjectType=\"Standard\" Name=\"" + name + "\" Id=\"" + id +
           "\"><cc:CreationDate>2026-03-04T09:30:00+01:00</cc:CreationDate><cc:ColorValues>" +
           values + "</cc:ColorValues></cc:Object>\n";
}

inline std::string cxfSpectrum(const std::vector<std::string>& values,
                               const std::string& attributes = " StartWL=\"380\"") {
    return "<cc:ReflectanceSpectrum ColorSpecification=\"cs\"" + attributes + ">" +
           joinedBy(values, " ") + "</cc:ReflectanceSpectrum>";
}

inline const char* const cxfSpecification =
    "<cc:ColorSpecification Id=\"cs\"><cc:TristimulusSpec><cc:Illuminant>D50</cc:Illuminant>"
    "<cc:Observer>2_Degree</cc:Observer></cc:TristimulusSpec><cc:MeasurementSpec>"
    "<cc:MeasurementType>Spectrum_Reflectance</cc:MeasurementType><cc:GeometryChoice>"
    "<cc:SingleAngle><cc:SingleAngleConfiguration>Annular</cc:SingleAngleConfiguration>"
    "<cc:IlluminationAngle>45.0</cc:IlluminationAngle>"
    "<cc:MeasurementAngle>0</cc:MeasurementAngle></cc:SingleAngle></cc:GeometryChoice>"
    "<cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/>"
    "<cc:CalibrationStandard>house tile</cc:CalibrationStandard><cc:Backing>White</cc:Backing>"
    "<cc:Device><cc:Manufacturer>Shed</cc:Manufacturer><cc:Model>lamp and prism</cc:Model>"
    "<cc:DeviceIllumination>M1_Daylight</cc:DeviceIllumination></cc:Device>"
    "</cc:MeasurementSpec></cc:ColorSpecification>";

}  // namespace rackbook::test
