#include "exchange/LightUnits.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

TEST(LightUnits, AreKnownByTheirNames) {
    for (const LightUnit unit : {LightUnit::lux, LightUnit::kilolux, LightUnit::wattPerM2,
                                 LightUnit::milliwattPerM2, LightUnit::microwattPerCm2})
        EXPECT_EQ(lightUnitNamed(nameOf(unit)), unit);
    EXPECT_EQ(lightUnitNamed("Lux"), LightUnit::lux);
    EXPECT_EQ(lightUnitNamed("klux"), LightUnit::kilolux);
    EXPECT_EQ(lightUnitNamed("W/m2"), LightUnit::wattPerM2);
    EXPECT_EQ(lightUnitNamed("mW/m^2"), LightUnit::milliwattPerM2);
    EXPECT_EQ(lightUnitNamed("uW/cm2"), LightUnit::microwattPerCm2);
    EXPECT_EQ(lightUnitNamed("\u03BCW/cm\u00B2"), LightUnit::microwattPerCm2);
    for (const char* other : {"", "fc", "W", "lm", "mW/cm2"})
        EXPECT_FALSE(lightUnitNamed(other)) << other;
}

// By the SI: 1 klx is 1000 lx; 1 mW/m² is 0.001 W/m²; 1 µW/cm² is 1e-6 W on 1e-4 m².
TEST(LightUnits, AreTurnedIntoLuxOrWattsOnASquareMetre) {
    EXPECT_EQ(inLuxOrWm2(12.5, LightUnit::lux), 12.5);
    EXPECT_EQ(inLuxOrWm2(12.5, LightUnit::kilolux), 12500);
    EXPECT_EQ(inLuxOrWm2(12.5, LightUnit::wattPerM2), 12.5);
    EXPECT_DOUBLE_EQ(inLuxOrWm2(45.3, LightUnit::milliwattPerM2), 0.0453);
    EXPECT_DOUBLE_EQ(inLuxOrWm2(45.3, LightUnit::microwattPerCm2), 0.453);
    EXPECT_EQ(quantityOf(LightUnit::kilolux), LightQuantity::illuminance_lx);
    EXPECT_EQ(quantityOf(LightUnit::microwattPerCm2), LightQuantity::ultravioletA_Wm2);
}

TEST(LightUnits, AreFoundInHeadings) {
    EXPECT_EQ(unitWordIn("Illuminance (lx)"), "lx");
    EXPECT_EQ(unitWordIn("LUX"), "lx");
    EXPECT_EQ(unitWordIn("light [klux]"), "klx");
    EXPECT_EQ(unitWordIn("UV-A \u00B5W/cm\u00B2"), "uw/cm2");
    EXPECT_EQ(unitWordIn("UV, \u03BCW\u00B7cm\u207B\u00B2"), "uw/cm2");
    EXPECT_EQ(unitWordIn("UVA_mW/m2"), "mw/m2");
    EXPECT_EQ(unitWordIn("UV W m-2"), "w/m2");
    EXPECT_EQ(unitWordIn("UV mW/cm^2"), "mw/cm2");
    EXPECT_EQ(unitWordIn("Light, foot-candles"), "fc");
    for (const char* none :
         {"", "Light", "flux", "Temperature (\u00B0C)", "luxury", "kW", "window 2"})
        EXPECT_FALSE(unitWordIn(none)) << none;
}

}  // namespace
}  // namespace rackbook
