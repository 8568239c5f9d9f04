#include <gtest/gtest.h>

#include "MeasurementText.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using namespace test;

const std::vector<std::string> labColumns = {"SAMPLE_ID", "LAB_L", "LAB_A", "LAB_B"};

std::string labText(const std::vector<std::vector<std::string>>& rows,
                    const std::string& header = {}, int sets = -1) {
    return cgatsText(labColumns, rows, header, sets);
}

Reading readingUnder(const std::string& header) {
    return measurementsIn(labText({{"a", "50", "1", "2"}}, header), "m").samples.at(0).reading;
}

TEST(CgatsFile, HoldsCielab) {
    const MeasurementFile file = measurementsIn(
        labText({{"a", "50.25", "-1.5", ".5"}, {"\"b c\"", "1e1", "+2", "-0"}}), "m");
    ASSERT_EQ(file.samples.size(), 2u);
    EXPECT_EQ(file.samples[0].reading.labL, 50.25);
    EXPECT_EQ(file.samples[0].reading.labA, -1.5);
    EXPECT_EQ(file.samples[0].reading.labB, 0.5);
    EXPECT_EQ(file.samples[1].name, "b c");
    EXPECT_EQ(file.samples[1].reading.labL, 10);
    EXPECT_EQ(file.samples[1].line, 9);
    EXPECT_FALSE(file.samples[1].reading.illuminant);
}

// The library of 2.14 makes 7 of 007, and puts what came before in front of 2b.
TEST(CgatsFile, KeepsNamesAsTheyAre) {
    const MeasurementFile file = measurementsIn(labText({{"007", "50", "0", "0"},
                                                         {"2b", "50", "0", "0"},
                                                         {"\"2026-03-04 æ\"", "5", "0", "0"},
                                                         {"0x10", "50", "0", "0"}}),
                                                "m");
    EXPECT_EQ(file.samples[0].name, "007");
    EXPECT_EQ(file.samples[1].name, "2b");
    EXPECT_EQ(file.samples[2].name, "2026-03-04 æ");
    EXPECT_EQ(file.samples[3].name, "0x10");
}

TEST(CgatsFile, NamesASampleByItsNameBeforeItsId) {
    const MeasurementFile file =
        measurementsIn(cgatsText({"SAMPLE_ID", "LAB_L", "LAB_A", "LAB_B", "SAMPLE_NAME"},
                                 {{"1", "50", "0", "0", "dusk"}}),
                       "m");
    EXPECT_EQ(file.samples[0].name, "dusk");
}

// Keywords of CGATS.17 as the colour library lists them; what their values look like is common
// practice.
TEST(CgatsFile, HoldsWhatItsHeaderSays) {
    const Reading reading = readingUnder(
        "ORIGINATOR \"somebody\"\nCREATED \"2026-03-04T10:00:00\"\n"
        "INSTRUMENTATION \"lamp and prism\"\nMEASUREMENT_SOURCE \"Illumination=D65 "
        "ObserverAngle=10\"\nFILTER \"M2\"\nSAMPLE_BACKING \"black\"\n"
        "MEASUREMENT_GEOMETRY \"45/0\"\n");
    EXPECT_EQ(reading.takenOn->text(), "2026-03-04");
    EXPECT_EQ(reading.instrument, "lamp and prism");
    EXPECT_EQ(reading.illuminant, Illuminant::D65);
    EXPECT_EQ(reading.observer, Observer::deg10);
    EXPECT_EQ(reading.condition, MeasurementCondition::M2);
    EXPECT_EQ(reading.backing, Backing::black);
    EXPECT_EQ(reading.geometry, "45/0");
}

TEST(CgatsFile, HoldsWeightingFunctionsInOneLineOrTwo) {
    for (const char* header :
         {"WEIGHTING_FUNCTION \"ILLUMINANT, D50\"\nWEIGHTING_FUNCTION \"OBSERVER, 2 degree\"\n",
          "WEIGHTING_FUNCTION \"ILLUMINANT,D50;OBSERVER,2 degree\"\n"}) {
        const Reading reading = readingUnder(header);
        EXPECT_EQ(reading.illuminant, Illuminant::D50);
        EXPECT_EQ(reading.observer, Observer::deg2);
    }
}

TEST(CgatsFile, LeavesAsideTheLightOfASpectrum) {
    std::vector<std::string> columns = wavelengthTexts(400, 700, 10, "nm");
    columns.insert(columns.begin(), "SampleID");
    std::vector<std::string> row(32, "0.5");
    row[0] = "a";
    const MeasurementFile file =
        measurementsIn(cgatsText(columns, {row}, "WEIGHTING_FUNCTION \"ILLUMINANT, F11\"\n"), "m");
    EXPECT_FALSE(file.samples[0].reading.illuminant);
    EXPECT_EQ(file.samples[0].reading.spectrum.size(), 31u);
}

TEST(CgatsFile, RefusesALightThatReadingsDoNotHold) {
    EXPECT_EQ(
        refusalOfText(labText({{"a", "50", "1", "2"}}, "WEIGHTING_FUNCTION \"ILLUMINANT, F11\"\n")),
        "m:8: WEIGHTING_FUNCTION says F11. Readings hold values for D50, D65 and A only: "
        "export them for one of these.");
    EXPECT_EQ(refusalOfText(labText({{"a", "50", "1", "2"}},
                                    "WEIGHTING_FUNCTION \"ILLUMINANT, D50\"\n"
                                    "MEASUREMENT_SOURCE \"Illumination=D65\"\n")),
              "m:9: WEIGHTING_FUNCTION says D50, and MEASUREMENT_SOURCE Illumination says D65. Put "
              "the one right that is wrong.");
}

TEST(CgatsFile, NotesADateThatCanBeReadTwoWays) {
    const MeasurementFile file =
        measurementsIn(labText({{"a", "50", "1", "2"}}, "CREATED \"3/4/2026\"\n"), "m");
    EXPECT_FALSE(file.samples[0].reading.takenOn);
    ASSERT_EQ(file.notes.size(), 1u);
    EXPECT_EQ(describe(file.notes[0]),
              "m:8: CREATED is \"3/4/2026\", which can be read in two ways. Say with --taken-on "
              "when it was measured.");
}

TEST(CgatsFile, HoldsSeveralTables) {
    const MeasurementFile file =
        measurementsIn(labText({{"a", "50", "1", "2"}}, "FILTER \"M0\"\n") +
                           labText({{"b", "60", "1", "2"}}, "FILTER \"M1\"\n"),
                       "m");
    ASSERT_EQ(file.samples.size(), 2u);
    EXPECT_EQ(file.samples[0].reading.condition, MeasurementCondition::M0);
    EXPECT_EQ(file.samples[1].reading.condition, MeasurementCondition::M1);
}

TEST(CgatsFile, TakesAnyLineEnds) {
    for (const char* lineEnd : {"\r\n", "\r"}) {
        std::string text;
        for (const char c : labText({{"a", "50", "1", "2"}, {"b", "50", "1", "2"}}))
            text += c == '\n' ? lineEnd : std::string(1, c);
        EXPECT_EQ(measurementsIn(text, "m").samples.at(1).line, 9);
    }
}

TEST(CgatsFile, RefusesWhatItsCountsContradict) {
    const std::vector<std::vector<std::string>> two = {{"a", "50", "1", "2"},
                                                       {"b", "50", "1", "2"}};
    const std::string remedy =
        ". The file may be cut short: export it again, or correct the number.";
    EXPECT_EQ(refusalOfText(labText(two, {}, 3)),
              "m:7: NUMBER_OF_SETS is 3, and there are 2 rows" + remedy);
    EXPECT_EQ(refusalOfText(labText(two, {}, 1)),
              "m:7: NUMBER_OF_SETS is 1, and there are 2 rows" + remedy);
    EXPECT_EQ(refusalOfText(labText({}, {}, 0)),
              "m: the file holds no samples. Export it again with at least one.");
    EXPECT_EQ(refusalOfText(labText({{"a", "50", "1"}, {"b", "50", "1", "2", "3", "4"}})),
              "m:8: the line has 3 values, and there are 4 columns. Give a value for each column; "
              "put names with blanks in quotation marks.\n"
              "m:9: the line has 6 values, and there are 4 columns. Give a value for each column; "
              "put names with blanks in quotation marks.");
}

TEST(CgatsFile, TakesRowsOverSeveralLines) {
    std::string text = labText({{"a", "50", "1", "2"}, {"b", "60", "3", "4"}});
    text.replace(text.find("50\t"), 3, "50\n");
    text.replace(text.find("3\t4"), 3, "3\n4");
    const MeasurementFile file = measurementsIn(text, "m");
    ASSERT_EQ(file.samples.size(), 2u);
    EXPECT_EQ(file.samples[1].line, 10);
    EXPECT_EQ(file.samples[1].reading.labB, 4);
    const std::string remedy =
        ". Give a value for each column; put names with blanks in quotation marks.";
    EXPECT_EQ(refusalOfText(labText({{"a", "50", "1"}, {"b", "60", "3", "4", "5"}})),
              "m:8: the line has 3 values, and there are 4 columns" + remedy +
                  "\nm:9: the line has 5 values, and there are 4 columns" + remedy);
}

TEST(CgatsFile, RefusesColumnsWithoutAColour) {
    EXPECT_EQ(refusalOfText(cgatsText({"SAMPLE_ID", "RGB_R"}, {{"a", "1"}})),
              "m:4: no column holds a colour. Export CIELAB (LAB_L, LAB_A, LAB_B), XYZ, or a "
              "column for each wavelength.");
    EXPECT_EQ(refusalOfText(cgatsText({"LAB_L", "LAB_B"}, {{"1", "1"}})),
              "m:4: no column names the samples. Give a column SAMPLE_ID or SAMPLE_NAME.\n"
              "m:4: there is no column LAB_A. Export all three or none.\n"
              "m:8: the sample has no name. Give each sample a name.");
    EXPECT_EQ(refusalOfText(
                  cgatsText({"SAMPLE_ID", "SPECTRAL_NM", "SPECTRAL_PCT"}, {{"a", "380", "50"}})),
              "m:4: the wavelengths stand in a column SPECTRAL_NM. Export a column for each "
              "wavelength, as SPECTRAL_NM380.");
}

TEST(CgatsFile, RefusesDecimalCommasAndWhatIsOutOfRange) {
    EXPECT_EQ(
        refusalOfText(labText(
            {{"a", "50,5", "1", "2"}, {"b", "101", "-201", "nan"}, {"c", "50", "1", "300"}})),
        "m:8 sample a, column LAB_L: the number has a comma (50,5). Write decimals with a "
        "point, as 12.5.\n"
        "m:9 sample b, column LAB_B: this is not a number (nan). Give a number with a decimal "
        "point, as 12.5.\n"
        "m:10 sample c: b* is 300. It lies between -200 and 200.");
}

TEST(CgatsFile, RefusesXyzOnAnotherScale) {
    EXPECT_EQ(refusalOfText(cgatsText({"SAMPLE_ID", "XYZ_X", "XYZ_Y", "XYZ_Z"},
                                      {{"a", "0.5", "0.6", "0.4"}})),
              "m:8: no X, Y or Z in the file is above 0.6, so that they seem to go from 0 to 1. "
              "Multiply them by 100: Y of a perfect white is 100.");
}

TEST(CgatsFile, SaysWhatTheLibrarySaysAndWhere) {
    EXPECT_EQ(refusalOfText(labText({{"a", "50", "1", "2"}}, "WEIGHTING_FUNCTION \"D50\"\n")),
              "m:2: the colour library cannot read this: Invalid value for property "
              "'WEIGHTING_FUNCTION'. Export the file again, or put the line right.");
    EXPECT_EQ(refusalOfText(labText({{"\xC3\xA6", "50", "1", "2"}})).substr(0, 66),
              "m:8: the colour library cannot read this: Unrecognized character: ");
    EXPECT_EQ(refusalOfText("three words first\n" + labText({{"a", "50", "1", "2"}}).substr(9)),
              "m:1: the colour library does not take this for CGATS.17. Let the first line be one "
              "word, as CGATS.17.");
}

// The library would open what .INCLUDE names.
TEST(CgatsFile, OpensNoOtherFile) {
    const TempFolder folder;
    putFile(folder.file("other"), "FILTER \"M1\"\n");
    for (const char* word : {".INCLUDE", "$include", "x.Include", "-..include"})
        EXPECT_EQ(refusalOfText(labText({{"a", "50", "1", "2"}},
                                        std::string(word) + " \"" + folder.file("other") + "\"\n")),
                  "m:2: the file wants another file to be read into it. Put all in one file.");
}

// Every beginning of a file is refused or read, and no longer file is held for complete.
TEST(CgatsFile, IsRefusedWhereItIsCutShort) {
    const std::string text = labText({{"a", "50.5", "1", "2"}, {"b", "50", "1", "2"}},
                                     "WEIGHTING_FUNCTION \"ILLUMINANT, D50\"\nCREATED \"2026\"\n");
    ASSERT_EQ(measurementsIn(text, "m").samples.size(), 2u);
    for (std::size_t length = 0; length + 2 < text.size(); ++length)
        EXPECT_THROW(measurementsIn(text.substr(0, length), "m"), Error) << length;
}

// A byte changed anywhere makes an error or another file, and nothing worse.
TEST(CgatsFile, LivesThroughAnyChangedByte) {
    const std::string text = labText({{"a", "50.5", "1", "2"}}, "WEIGHTING_FUNCTION \"A, B\"\n");
    int refused = 0;
    for (std::size_t at = 0; at < text.size(); ++at)
        for (const char c : {'"', '#', '.', ';', ',', '-', '0', 'e', ' ', '\n', '\x1A', '\xFF'}) {
            std::string changed = text;
            changed[at] = c;
            try {
                measurementsIn(changed, "m");
            } catch (const Error&) {
                ++refused;
            }
        }
    EXPECT_GT(refused, 500);
}

TEST(CgatsFile, RefusesWhatWouldKeepTheLibraryBusy) {
    std::string keywords;
    for (int i = 0; i < 3000; ++i)
        keywords += "K" + std::to_string(i) + " 1\n";
    EXPECT_EQ(refusalOfText(labText({{"a", "50", "1", "2"}}, keywords)),
              "m: the file holds too many tables or keywords. Split it.");
    std::string tables;
    for (int i = 0; i < 150; ++i)
        tables += labText({{"s" + std::to_string(i), "50", "1", "2"}});
    EXPECT_EQ(refusalOfText(tables), "m: the file holds too many tables or keywords. Split it.");
    EXPECT_EQ(refusalOfText("CGATS.17\n" + std::string((16 << 20) + 1, ' ')),
              "m: the file is larger than 16 MB. Split it.");
    EXPECT_EQ(refusalOfText(labText({{"a", "50", "1", "2"}}, {}, 2147483647)).substr(0, 44),
              "m:7: NUMBER_OF_SETS is 2147483647, and there");
    const std::string longWord(1 << 20, 'x');
    EXPECT_EQ(refusalOfText(labText({{longWord, "50", "1", "2"}})).substr(0, 20),
              "m:8 sample xxxxxxxxx");
}

}  // namespace
}  // namespace rackbook
