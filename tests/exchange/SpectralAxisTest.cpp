#include "exchange/SpectralAxis.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

std::string faultsThrough(const std::vector<double>& wavelengths_nm) {
    std::vector<AxisFault> faults;
    axisThrough(wavelengths_nm, faults);
    std::string text;
    for (const AxisFault& fault : faults)
        text += fault.what + ". " + fault.remedy + "\n";
    return text;
}

std::vector<double> steps(double from, double to, double step) {
    std::vector<double> wavelengths;
    for (int i = 0; from + i * step <= to; ++i)
        wavelengths.push_back(from + i * step);
    return wavelengths;
}

TEST(SpectralAxis, KnowsTheNamesOfWavelengths) {
    for (const char* name :
         {"380", "380 nm", "380nm", " 380 ", "nm380", "NM_380", "R380", "r_380", "SPECTRAL_NM380",
          "SPECTRAL_NM_380", "SPECTRAL_380", "380.0", "spectral_nm380"}) {
        const auto named = wavelengthNamed(name);
        ASSERT_TRUE(named) << name;
        EXPECT_EQ(named->wavelength_nm, 380) << name;
        EXPECT_FALSE(named->unit) << name;
    }
    EXPECT_EQ(wavelengthNamed("SPECTRAL_PCT_380")->unit, SpectralUnit::percent);
    EXPECT_EQ(wavelengthNamed("SPECTRAL_DEC380")->unit, SpectralUnit::fraction);
    EXPECT_EQ(wavelengthNamed("402.5")->wavelength_nm, 402.5);
    EXPECT_EQ(wavelengthNamed("380,0", true)->wavelength_nm, 380);
}

TEST(SpectralAxis, TakesNothingElseForOne) {
    for (const char* name : {"", "nm", "R", "38", "3800", "380 mm", "LAB_L", "RGB_R", "380,0",
                             "1e3", "-380", "380x", "SPECTRAL_NM", "D50", "nan"})
        EXPECT_FALSE(wavelengthNamed(name)) << name;
}

TEST(SpectralAxis, RunsEvenlyEvery5Or10Or20) {
    for (const double step : {5.0, 10.0, 20.0}) {
        std::vector<AxisFault> faults;
        const auto axis = axisThrough(steps(380, 740, step), faults);
        ASSERT_TRUE(axis);
        EXPECT_TRUE(faults.empty());
        EXPECT_EQ(axis->step_nm, step);
        EXPECT_EQ(axis->at_nm(axis->count - 1), 740);
    }
}

TEST(SpectralAxis, TellsWhatIsWrong) {
    EXPECT_EQ(faultsThrough(steps(400, 700, 1)),
              "the step is 1 nm. Give values every 5, 10 or 20 nm.\n");
    EXPECT_EQ(faultsThrough(steps(402, 702, 10)),
              "the spectrum starts at 402 nm. Let it start at a multiple of 5 nm.\n"
              "the spectrum runs from 402 to 702 nm. Give at least the values from 400 to 700 "
              "nm.\n");
    EXPECT_EQ(faultsThrough(steps(290, 840, 10)),
              "the spectrum runs from 290 to 840 nm. Leave out what lies below 300 nm or above 830 "
              "nm.\n");
    std::vector<double> gap = steps(400, 700, 10);
    gap.erase(gap.begin() + 3);
    EXPECT_EQ(faultsThrough(gap),
              "the steps are not even: there is no value at 430 nm. Give every wavelength from the "
              "first to the last.\n");
    gap.erase(gap.begin() + 5, gap.begin() + 20);
    EXPECT_EQ(faultsThrough(gap),
              "the steps are not even: there is no value at 430, 460, 470, 480, 490 and more nm. "
              "Give every wavelength from the first to the last.\n");
    EXPECT_EQ(faultsThrough({400, 403, 700}),
              "the steps are not even: the smallest is 3 nm. Give values every 5, 10 or 20 nm.\n");
    EXPECT_EQ(faultsThrough({400, 400, 410}),
              "the wavelength 400 nm is there twice. Leave one of the two out.\n");
    EXPECT_EQ(faultsThrough({400}),
              "a spectrum has more than one wavelength. Give at least the values from 400 to 700 "
              "nm.\n");
}

}  // namespace
}  // namespace rackbook
