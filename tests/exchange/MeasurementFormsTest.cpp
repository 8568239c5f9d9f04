// Spectra whose colours are published go through each form of file and come out at those colours:
// tests/calc/facts/spectral-to-lab*.csv, which say where their figures are from.
#include <gtest/gtest.h>
#include <lcms2.h>

#include <map>

#include "MeasurementText.h"
#include "calc/Colorimetry.h"
#include "calc/FactRows.h"

namespace rackbook {
namespace {

using namespace test;

constexpr int from_nm = 380;
constexpr int to_nm = 730;

// The values of a row as they stand in the table, or times a hundred.
std::vector<std::string> valuesOf(const FactRow& row, bool percent) {
    std::vector<std::string> texts;
    for (const std::string& at : wavelengthTexts(from_nm, to_nm, 10))
        texts.push_back(percent ? formatFixed(100 * row.number(at), 3) : row.text(at));
    return texts;
}

std::vector<FactRow> spectra() {
    return factRows("spectral-to-lab-spectra.csv");
}

void expectPublishedColours(const MeasurementFile& file) {
    std::map<std::string, Spectrum> found;
    for (const MeasuredSample& sample : file.samples)
        found[sample.name] = *spectrumIn(sample.reading);
    ASSERT_EQ(found.size(), 18u);
    int compared = 0;
    for (const FactRow& row : factRows("spectral-to-lab.csv")) {
        SCOPED_TRACE(row.text("sample") + " " + row.text("illuminant"));
        const std::optional<Illuminant> light = enumFrom<Illuminant>(row.text("illuminant"));
        ASSERT_TRUE(light);
        const Lab lab = labOf(found.at(row.text("sample")), viewingLightOf(*light), Observer::deg2);
        EXPECT_NEAR(lab.l, row.number("L"), 6e-5);
        EXPECT_NEAR(lab.a, row.number("a"), 6e-5);
        EXPECT_NEAR(lab.b, row.number("b"), 6e-5);
        ++compared;
    }
    EXPECT_EQ(compared, 54);
}

// Written by the colour library's own writer.
std::string writtenByLibrary(bool percent) {
    cmsHANDLE it8 = cmsIT8Alloc(nullptr);
    const std::vector<std::string> columns =
        wavelengthTexts(from_nm, to_nm, 10, percent ? "SPECTRAL_PCT_" : "SPECTRAL_NM");
    const std::vector<FactRow> rows = spectra();
    cmsIT8SetSheetType(it8, "CGATS.17");
    cmsIT8SetPropertyStr(it8, "CREATED", "2026-03-04T10:00:00");
    cmsIT8SetPropertyMulti(it8, "WEIGHTING_FUNCTION", "ILLUMINANT", "D50");
    cmsIT8SetPropertyDbl(it8, "NUMBER_OF_FIELDS", static_cast<double>(columns.size() + 1));
    cmsIT8SetPropertyDbl(it8, "NUMBER_OF_SETS", static_cast<double>(rows.size()));
    cmsIT8SetDataFormat(it8, 0, "SAMPLE_ID");
    for (std::size_t j = 0; j < columns.size(); ++j)
        cmsIT8SetDataFormat(it8, static_cast<int>(j + 1), columns[j].c_str());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::vector<std::string> values = valuesOf(rows[i], percent);
        cmsIT8SetDataRowCol(it8, static_cast<int>(i), 0, rows[i].text("sample").c_str());
        for (std::size_t j = 0; j < values.size(); ++j)
            cmsIT8SetDataRowColDbl(it8, static_cast<int>(i), static_cast<int>(j + 1),
                                   FactRow::numberIn(values[j]));
    }
    cmsUInt32Number size = 0;
    cmsIT8SaveToMem(it8, nullptr, &size);
    std::string text(size, '\0');
    cmsIT8SaveToMem(it8, text.data(), &size);
    cmsIT8Free(it8);
    text.resize(text.find_last_not_of('\0') + 1);
    return text;
}

std::string asTable(const std::string& separator, bool percent, bool decimalComma) {
    std::string text =
        "sample" + separator + joinedBy(wavelengthTexts(from_nm, to_nm, 10), separator) + "\r\n";
    for (const FactRow& row : spectra()) {
        std::string line = joinedBy(valuesOf(row, percent), separator);
        if (decimalComma)
            for (char& c : line)
                c = c == '.' ? ',' : c;
        text += row.text("sample") + separator + line + "\r\n";
    }
    return text;
}

TEST(MeasurementForms, CgatsKeepsPublishedColours) {
    const MeasurementFile file = measurementsIn(writtenByLibrary(false), "m");
    EXPECT_EQ(file.form, MeasurementForm::cgats);
    EXPECT_FALSE(file.wasPercent);
    expectPublishedColours(file);
}

TEST(MeasurementForms, CgatsInPerCentKeepsPublishedColours) {
    const MeasurementFile file = measurementsIn(writtenByLibrary(true), "m");
    EXPECT_TRUE(file.wasPercent);
    expectPublishedColours(file);
}

TEST(MeasurementForms, CxfKeepsPublishedColours) {
    std::string objects;
    for (const FactRow& row : spectra())
        objects += cxfObject(row.text("sample"), "i" + row.text("sample"),
                             cxfSpectrum(valuesOf(row, false)));
    const MeasurementFile file = measurementsIn(cxfText(objects, cxfSpecification), "m");
    EXPECT_EQ(file.form, MeasurementForm::cxf3);
    expectPublishedColours(file);
}

TEST(MeasurementForms, TablesKeepPublishedColours) {
    for (const char* separator : {",", ";", "\t"})
        for (const bool percent : {false, true})
            for (const bool decimalComma : {false, true}) {
                if (decimalComma && *separator == ',')
                    continue;
                const MeasurementFile file =
                    measurementsIn(asTable(separator, percent, decimalComma), "m");
                EXPECT_EQ(file.form, MeasurementForm::spectraTable);
                EXPECT_EQ(file.wasPercent, percent);
                expectPublishedColours(file);
            }
}

// XYZ of a colour table, every lamp: Y of the perfect white is 100 in CGATS.17 and CxF.
TEST(MeasurementForms, KeepPublishedXyz) {
    for (const FactRow& row : factRows("spectral-to-lab.csv")) {
        const MeasurementFile cgats =
            measurementsIn(cgatsText({"SAMPLE_ID", "XYZ_X", "XYZ_Y", "XYZ_Z"},
                                     {{"a", row.text("X"), row.text("Y"), row.text("Z")}}),
                           "m");
        const MeasurementFile cxf =
            measurementsIn(cxfText(cxfObject("a", "i",
                                             "<cc:ColorCIEXYZ><cc:X>" + row.text("X") +
                                                 "</cc:X><cc:Y>" + row.text("Y") + "</cc:Y><cc:Z>" +
                                                 row.text("Z") + "</cc:Z></cc:ColorCIEXYZ>")),
                           "m");
        for (const MeasurementFile* file : {&cgats, &cxf}) {
            const MeasuredXyz xyz = file->samples.at(0).xyz.value();
            EXPECT_EQ(xyz.x, row.number("X"));
            EXPECT_EQ(xyz.y, row.number("Y"));
            EXPECT_EQ(xyz.z, row.number("Z"));
        }
    }
}

TEST(MeasurementForms, AreRecognisedByWhatTheyHold) {
    EXPECT_EQ(refusalOfText(""), "m: the file is empty. Export it again.");
    EXPECT_EQ(refusalOfText(" \r\n\t"), "m: the file is empty. Export it again.");
    EXPECT_EQ(refusalOfText("\xEF\xBB\xBF"), "m: the file is empty. Export it again.");
    EXPECT_EQ(refusalOfText("a few words\nof no form\n"),
              "m:1: this is no form of measurements that is known. Give CGATS.17 text, CxF3 or a "
              "table of spectra as CSV.");
    EXPECT_EQ(refusalOfText(std::string("CGATS.17\nab\0c", 13)),
              "m:2: the file holds bytes that are no text. Give CGATS.17, CxF or a table of "
              "spectra, not a file of another kind.");
    EXPECT_EQ(refusalOfText("\xFF\xFE<\0"), "m: the file is UTF-16. Save it as UTF-8.");
    EXPECT_EQ(refusalOfText("a,380\n\xE9,1\n"), "m:2: the text is not UTF-8. Save it as UTF-8.");
}

TEST(MeasurementForms, AreReadBehindAByteOrderMark) {
    EXPECT_EQ(measurementsIn("\xEF\xBB\xBF" + writtenByLibrary(false), "m").samples.size(), 18u);
    EXPECT_EQ(measurementsIn("\xEF\xBB\xBF" + asTable(",", false, false), "m").samples.size(), 18u);
}

}  // namespace
}  // namespace rackbook
