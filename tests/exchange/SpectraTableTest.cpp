#include <gtest/gtest.h>

#include "MeasurementText.h"

namespace rackbook {
namespace {

using namespace test;

// A table with a row for each of the samples; every value of a sample is the same.
std::string table(const std::vector<std::pair<std::string, std::string>>& samples,
                  const std::string& separator = ",", const std::string& heading = {}) {
    const std::vector<std::string> wavelengths = wavelengthTexts(400, 700, 10);
    std::string text =
        heading.empty() ? "sample" + separator + joinedBy(wavelengths, separator) : heading;
    for (const auto& [name, value] : samples)
        text += "\n" + name + separator +
                joinedBy(std::vector<std::string>(wavelengths.size(), value), separator);
    return text;
}

TEST(SpectraTable, TakesARowForEachSample) {
    const MeasurementFile file = measurementsIn(table({{"a b", "0.25"}, {"\"c, d\"", "1.1"}}), "m");
    ASSERT_EQ(file.samples.size(), 2u);
    EXPECT_EQ(file.samples[0].name, "a b");
    EXPECT_EQ(file.samples[1].name, "c, d");
    EXPECT_EQ(file.samples[1].line, 3);
    const Reading& reading = file.samples[0].reading;
    EXPECT_EQ(reading.spectrumStart_nm, 400);
    EXPECT_EQ(reading.spectrumStep_nm, 10);
    EXPECT_EQ(reading.spectrum, std::vector<double>(31, 0.25));
}

TEST(SpectraTable, TakesAColumnForEachSample) {
    std::string text = "nm;a;b\r\n";
    for (const std::string& at : wavelengthTexts(400, 700, 20))
        text += at + ";0,5;0,25\r\n";
    const MeasurementFile file = measurementsIn(text, "m");
    ASSERT_EQ(file.samples.size(), 2u);
    EXPECT_EQ(file.samples[1].name, "b");
    EXPECT_EQ(file.samples[1].reading.spectrum, std::vector<double>(16, 0.25));
    EXPECT_EQ(file.samples[1].reading.spectrumStep_nm, 20);
}

TEST(SpectraTable, PutsWavelengthsInOrder) {
    std::string text = "sample";
    std::string values = "\na";
    for (int at_nm = 700; at_nm >= 400; at_nm -= 10) {
        text += ",R" + std::to_string(at_nm);
        values += "," + formatFixed(at_nm / 1000.0, 3);
    }
    const Reading reading = measurementsIn(text + values, "m").samples.at(0).reading;
    EXPECT_EQ(reading.spectrum.front(), 0.4);
    EXPECT_EQ(reading.spectrum.back(), 0.7);
}

TEST(SpectraTable, SaysWhichColumnsItLeavesAside) {
    std::string text = table({}) + ",L*\na," + joinedBy(std::vector<std::string>(32, "0.5"), ",");
    const MeasurementFile file = measurementsIn(text, "m");
    ASSERT_EQ(file.notes.size(), 1u);
    EXPECT_EQ(describe(file.notes[0]),
              "m:1: these columns are no wavelengths and were left aside: \"L*\". Only spectra are "
              "read from a table.");
}

TEST(SpectraTable, TellsEverythingThatIsWrongAtOnce) {
    const std::string good = joinedBy(std::vector<std::string>(29, "0.5"), ",");
    EXPECT_EQ(refusalOfText(table({}) + "\na,x,," + good + "\nb,0.5,nan," + good + "\na,0.5,-0.1," +
                            good + "\n,inf,1," + good),
              "m:2 sample a, at 400 nm: this is not a number (x). Give a number with a decimal "
              "point, as 12.5.\n"
              "m:2 sample a, at 410 nm: the value is missing. Give a number, or leave the "
              "sample out.\n"
              "m:3 sample b, at 410 nm: this is not a number (nan). Give a number with a "
              "decimal point, as 12.5.\n"
              "m:4 sample a: a sample of this name stands in line 2. Give each sample a name of "
              "its own, or take one of the two out.\n"
              "m:5 at 400 nm: this is not a number (inf). Give a number with a decimal point, "
              "as 12.5.\n"
              "m:5: the sample has no name. Give each sample a name.\n"
              "m:4 sample a, at 410 nm: the reflectance is -0.1. No surface reflects less than "
              "nothing: calibrate, and measure it again, or write 0 where it is noise.");
}

TEST(SpectraTable, RefusesLinesOfOtherLengths) {
    EXPECT_EQ(refusalOfText("sample,400,410\na,0.5\nb,0,5,0,5\n"),
              "m:2: the line has 2 fields, and the headings have 3. Give a field for each heading; "
              "where decimals have a comma, part the fields with semicolons.\n"
              "m:3: the line has 5 fields, and the headings have 3. Give a field for each heading; "
              "where decimals have a comma, part the fields with semicolons.");
    EXPECT_EQ(refusalOfText("sample;400;410\n"),
              "m: the table holds no values. Give a line of headings and a line for each sample.");
    EXPECT_EQ(refusalOfText("sample,first,second\na,1,2\n"),
              "m:1: neither the headings nor the first column are wavelengths. Head a column for "
              "each wavelength, as 380 or 380 nm, or begin each row with one.");
}

TEST(SpectraTable, TakesNoCommaBesidePointsForADecimal) {
    std::string text = table({{"a", "0.5"}, {"b", "0,5"}}, ";");
    EXPECT_EQ(firstLineOf(refusalOfText(text)),
              "m:3 sample b, at 400 nm: the number has a comma (0,5). Write decimals with a "
              "point, as 12.5.");
}

// The sample's name is taken as text, whatever it looks like.
TEST(SpectraTable, KeepsNamesAsTheyAre) {
    const MeasurementFile file = measurementsIn(table({{"007", "0.5"}, {"1e3", "0.5"}}), "m");
    EXPECT_EQ(file.samples[0].name, "007");
    EXPECT_EQ(file.samples[1].name, "1e3");
}

TEST(SpectraTable, TellsPerCentFromFractions) {
    const MeasurementFile file = measurementsIn(table({{"a", "45.3"}, {"b", "1.3"}}), "m");
    EXPECT_TRUE(file.wasPercent);
    EXPECT_EQ(file.samples[0].reading.spectrum[0], 0.453);
    EXPECT_EQ(file.samples[1].reading.spectrum[0], 0.013);
    EXPECT_FALSE(measurementsIn(table({{"a", "1.2"}}), "m").wasPercent);
}

TEST(SpectraTable, RefusesPerCentMixedWithFractions) {
    const std::string mixed = table({{"a", "45.3"}, {"b", "0.9"}});
    EXPECT_EQ(refusalOfText(mixed),
              "m: spectra seem to be per cent for a (line 2), and fractions for b (line 3). Give "
              "all of them in one unit; where it is one, say with --spectra which.");
    // A very dark ink beside others: said to be per cent, it is taken.
    const MeasurementFile file = measurementsIn(mixed, "m", SpectralUnit::percent);
    EXPECT_EQ(file.samples[1].reading.spectrum[0], 0.009);
    EXPECT_EQ(firstLineOf(refusalOfText(mixed, SpectralUnit::fraction)),
              "m:2 sample a, at 400 nm: the reflectance is 45.3, and 30 more cannot be either. "
              "Give a fraction, 0 to 1.2.");
    const std::string inOne = table({}) + "\na," +
                              joinedBy(std::vector<std::string>(15, "45"), ",") + "," +
                              joinedBy(std::vector<std::string>(16, "0.45"), ",");
    EXPECT_EQ(refusalOfText(inOne),
              "m:2 sample a: the values at 540 and 550 nm are 45 and 0.45: fractions and per cent "
              "seem to be mixed. Give all values in one unit.");
}

TEST(SpectraTable, RefusesTooManySamples) {
    std::string text = "nm";
    for (int i = 0; i < 10'002; ++i)
        text += ",s" + std::to_string(i);
    for (const std::string& at : wavelengthTexts(400, 700, 20)) {
        text += "\n" + at;
        for (int i = 0; i < 10'002; ++i)
            text += ",0.5";
    }
    EXPECT_EQ(refusalOfText(text), "m:1: there are more than 10000 samples. Split the file.");
}

}  // namespace
}  // namespace rackbook
