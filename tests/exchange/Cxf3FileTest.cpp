// Elements, attributes and their values as the schema of http://colorexchangeformat.com/CxF3-core
// has them (ISO 17972-1).
#include <gtest/gtest.h>

#include "MeasurementText.h"

namespace rackbook {
namespace {

using namespace test;

const std::vector<std::string> halves(36, "0.5");

std::string lab(const std::string& l, const std::string& attributes = {}) {
    return "<cc:ColorCIELab" + attributes + "><cc:L>" + l +
           "</cc:L><cc:A>-1.5</cc:A><cc:B>2</cc:B></cc:ColorCIELab>";
}

TEST(Cxf3File, HoldsSpectrumAndCielabWithTheirConditions) {
    const MeasurementFile file = measurementsIn(
        cxfText(cxfObject("dusk", "c1",
                          cxfSpectrum(halves) + lab("76.07", " ColorSpecification=\"cs\"")),
                cxfSpecification),
        "m");
    ASSERT_EQ(file.samples.size(), 1u);
    const MeasuredSample& sample = file.samples[0];
    EXPECT_EQ(sample.name, "dusk");
    EXPECT_EQ(sample.line, 4);
    EXPECT_EQ(sample.reading.spectrum, std::vector<double>(36, 0.5));
    EXPECT_EQ(sample.reading.spectrumStart_nm, 380);
    EXPECT_EQ(sample.reading.spectrumStep_nm, 10);
    EXPECT_EQ(sample.reading.labL, 76.07);
    EXPECT_EQ(sample.reading.labA, -1.5);
    EXPECT_EQ(sample.reading.illuminant, Illuminant::D50);
    EXPECT_EQ(sample.reading.observer, Observer::deg2);
    EXPECT_EQ(sample.reading.condition, MeasurementCondition::M1);
    EXPECT_EQ(sample.reading.backing, Backing::white);
    EXPECT_EQ(sample.reading.geometry, "45:0");
    EXPECT_EQ(sample.reading.instrument, "Shed lamp and prism");
    EXPECT_EQ(sample.reading.note, "Calibration standard: house tile");
    EXPECT_EQ(sample.reading.takenOn->text(), "2026-03-04");
}

TEST(Cxf3File, IsReadUnderAnyPrefixAndNone) {
    std::string text = cxfText(cxfObject("dusk", "c1", lab("50")));
    for (const char* prefix : {"q:", ""}) {
        std::string other;
        for (std::size_t at = 0; at < text.size();)
            if (text.compare(at, 3, "cc:") == 0) {
                other += prefix;
                at += 3;
            } else
                other += text[at++];
        const std::string declared = *prefix ? "xmlns:q" : "xmlns";
        other.replace(other.find("xmlns:cc"), 8, declared);
        EXPECT_EQ(measurementsIn(other, "m").samples.at(0).reading.labL, 50);
    }
}

TEST(Cxf3File, TakesTheStartFromTheSpecificationToo) {
    const MeasurementFile file = measurementsIn(
        cxfText(cxfObject("a", "c1", cxfSpectrum(halves, "")), cxfSpecification), "m");
    EXPECT_EQ(file.samples[0].reading.spectrumStart_nm, 380);
}

TEST(Cxf3File, NamesObjectsThatShareANameByTheirIds) {
    const MeasurementFile file =
        measurementsIn(cxfText(cxfObject("a", "c1", lab("50")) + cxfObject("a", "c2", lab("51")) +
                               cxfObject("", "c3", lab("52")) + cxfObject("b", "c4", lab("53"))),
                       "m");
    ASSERT_EQ(file.samples.size(), 4u);
    EXPECT_EQ(file.samples[0].name, "c1");
    EXPECT_EQ(file.samples[1].name, "c2");
    EXPECT_EQ(file.samples[2].name, "c3");
    EXPECT_EQ(file.samples[3].name, "b");
}

TEST(Cxf3File, LeavesAsideObjectsWithoutColourValuesAndOtherNamespaces) {
    const MeasurementFile file = measurementsIn(
        cxfText("<cc:Object ObjectType=\"Target\" Name=\"t\" Id=\"t\"><cc:DeviceColorValues>"
                "<cc:ColorRGB/></cc:DeviceColorValues></cc:Object>"
                "<x:Object xmlns:x=\"urn:other\" Name=\"x\"><cc:ColorValues/></x:Object>" +
                cxfObject("a", "c1", lab("50"))),
        "m");
    EXPECT_EQ(file.samples.size(), 1u);
    EXPECT_EQ(refusalOfText(cxfText("<cc:Object Name=\"t\" Id=\"t\"/>")),
              "m: no object holds a spectrum, CIELAB or XYZ. Export measured values, not only what "
              "was to be printed.");
}

TEST(Cxf3File, RefusesOtherXml) {
    EXPECT_EQ(refusalOfText("<a/>"),
              "m:1: the root element is a. Give CxF/X core: its root is CxF.");
    EXPECT_EQ(refusalOfText("<CxF xmlns=\"http://colorexchangeformat.com/v2\"/>"),
              "m:1: the namespace of CxF is \"http://colorexchangeformat.com/v2\". Export as CxF3: "
              "its namespace is http://colorexchangeformat.com/CxF3-core.");
    EXPECT_EQ(refusalOfText("<").substr(0, 34), "m:1: this is not well-formed XML: ");
}

// Entities that would grow to a billion characters are never expanded (W3C XML 1.0, 4.4).
TEST(Cxf3File, ExpandsNoEntities) {
    std::string dtd = "<!DOCTYPE CxF [<!ENTITY a \"ha\">";
    for (char c = 'b'; c < 'n'; ++c) {
        const std::string inner = std::string("&") + static_cast<char>(c - 1) + ";";
        dtd += std::string("<!ENTITY ") + c + " \"";
        for (int i = 0; i < 10; ++i)
            dtd += inner;
        dtd += "\">";
    }
    std::string text = cxfText(cxfObject("&m;", "c1", lab("50")));
    text.insert(text.find("<cc:CxF"), dtd + "]>");
    EXPECT_EQ(refusalOfText(text), "m:2: the document has a DTD. Leave out DOCTYPE; CxF has none.");
    EXPECT_EQ(refusalOfText("<!DOCTYPE CxF SYSTEM \"file:///etc/hostname\"><CxF/>"),
              "m:1: the document has a DTD. Leave out DOCTYPE; CxF has none.");
}

TEST(Cxf3File, RefusesWhatItsSpectrumLacks) {
    EXPECT_EQ(
        refusalOfText(cxfText(cxfObject("a", "c1", cxfSpectrum(halves)))),
        "m:4 sample a, element ReflectanceSpectrum: the file has no ColorSpecification of this "
        "id (cs). Export the file again with its specifications.\n"
        "m:4 sample a, element ReflectanceSpectrum: the file does not say the step. A "
        "ColorSpecification says it, in WavelengthRange.");
    EXPECT_EQ(
        refusalOfText(cxfText(cxfObject("a", "c1", cxfSpectrum(halves, " StartWL=\"400\"")),
                              cxfSpecification)),
        "m:4 sample a, element ReflectanceSpectrum: the spectrum starts at 400 nm, and by its "
        "specification at 380 nm. Put the one right that is wrong.");
    EXPECT_EQ(refusalOfText(cxfText(cxfObject("a", "c1", cxfSpectrum({"0.5", "0,5", "x"})),
                                    cxfSpecification)),
              "m:4 sample a, element ReflectanceSpectrum: the number has a comma (0,5). Write "
              "decimals with a point, as 12.5.\n"
              "m:4 sample a, element ReflectanceSpectrum: this is not a number (x). Give a number "
              "with a decimal point, as 12.5.");
    EXPECT_EQ(
        refusalOfText(cxfText(cxfObject("a", "c1", cxfSpectrum({"0.5", "0.5"})), cxfSpecification)),
        "m:4 sample a, element ReflectanceSpectrum: the spectrum runs from 380 to 390 nm. Give "
        "at least the values from 400 to 700 nm.");
}

// The schema has fractions: values lie below 3.
TEST(Cxf3File, RefusesPerCent) {
    std::vector<std::string> values(36, "0.5");
    values[3] = "45";
    EXPECT_EQ(refusalOfText(cxfText(cxfObject("a", "c1", cxfSpectrum(values)), cxfSpecification)),
              "m:4 sample a, at 410 nm: the reflectance is 45. Give a fraction, 0 to 1.2.");
}

TEST(Cxf3File, RefusesWhatCannotBeToldApart) {
    EXPECT_EQ(
        refusalOfText(cxfText(cxfObject("a", "c1", cxfSpectrum(halves) + cxfSpectrum(halves)),
                              cxfSpecification)),
        "m:4 sample a, element ReflectanceSpectrum: the object holds ReflectanceSpectrum more "
        "than once. Export one measurement condition at a time.");
    EXPECT_EQ(
        refusalOfText(cxfText(cxfObject("a", "c1", lab("50")) + cxfObject("b", "c1", lab("50")) +
                              cxfObject("a", "c1", lab("50")))),
        "m:6 sample c1: a sample of this name stands in line 4. Give each sample a name of "
        "its own, or take one of the two out.");
}

TEST(Cxf3File, RefusesAnotherLightAndMeasurementsOfLight) {
    const std::string other =
        "<cc:ColorSpecification Id=\"cs\"><cc:TristimulusSpec><cc:Illuminant>F11</cc:Illuminant>"
        "</cc:TristimulusSpec><cc:MeasurementSpec><cc:MeasurementType>Spectrum_Emissive"
        "</cc:MeasurementType></cc:MeasurementSpec></cc:ColorSpecification>";
    EXPECT_EQ(refusalOfText(
                  cxfText(cxfObject("a", "c1", lab("50", " ColorSpecification=\"cs\"")), other)),
              "m:4 sample a, element ColorCIELab: Illuminant is F11. Readings hold values for D50, "
              "D65 and A and for 2 and 10 degrees only.\n"
              "m:4 sample a, element ColorCIELab: its MeasurementType is not of reflectance "
              "(Spectrum_Emissive). Leave the sample out.");
}

TEST(Cxf3File, IsRefusedWhereItIsCutShort) {
    const std::string text = cxfText(cxfObject("a", "c1", cxfSpectrum(halves)), cxfSpecification);
    ASSERT_EQ(measurementsIn(text, "m").samples.size(), 1u);
    for (std::size_t length = 1; length + 2 < text.size(); ++length)
        EXPECT_THROW(measurementsIn(text.substr(0, length), "m"), RefusedInput) << length;
}

TEST(Cxf3File, LivesThroughDeepNesting) {
    std::string deep;
    for (int i = 0; i < 100'000; ++i)
        deep += "<cc:a>";
    EXPECT_EQ(refusalOfText(cxfText({}, "<cc:ColorSpecification Id=\"cs\">" + deep)),
              "m:5: elements are nested too deeply. No ColorSpecification is; check the file.");
    EXPECT_EQ(refusalOfText(cxfText("<cc:Object>" + deep)).substr(0, 34),
              "m:4: this is not well-formed XML: ");
}

}  // namespace
}  // namespace rackbook
