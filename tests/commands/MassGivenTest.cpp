#include "commands/MassGiven.h"

#include <gtest/gtest.h>

#include "base/Error.h"

namespace rackbook {

namespace {

std::string refusal(const std::string& text, const MassTerms& terms = {}) {
    try {
        massGiven(text, "weigh: MASS", terms);
    } catch (const UsageError& error) {
        return error.what();
    }
    return "nothing was refused";
}

std::string noMass(const std::string& text) {
    return "weigh: MASS is \"" + text +
           "\", which is no mass. Write a number with one decimal point or comma and nothing "
           "between thousands, and the unit behind it, such as 4.5 or 4,5g.";
}

TEST(MassGiven, ReadsGramsWithPointOrComma) {
    for (const char* text : {"4.5", "4,5", "4.5g", "4,5g", "4.5 g", "4,5 g", "04.50"})
        EXPECT_EQ(massGiven(text, "MASS"), 4.5) << text;
    EXPECT_EQ(massGiven("1,234", "MASS"), 1.234);
    EXPECT_EQ(massGiven(".5", "MASS"), 0.5);
    EXPECT_EQ(massGiven("12", "MASS"), 12);
}

TEST(MassGiven, ReadsOtherUnitsToTheLastDigit) {
    EXPECT_EQ(massGiven("0.05kg", "MASS"), 50);
    EXPECT_EQ(massGiven("4,35 kg", "MASS"), 4350);
    EXPECT_EQ(massGiven("1.001kg", "MASS"), 1001);
    EXPECT_EQ(massGiven("250mg", "MASS"), 0.25);
    EXPECT_EQ(massGiven("0.3mg", "MASS"), 0.0003);
}

// NIST Handbook 44, appendix C: a pound of 453.59237 g has 16 ounces.
TEST(MassGiven, TakesTheAvoirdupoisOunce) {
    EXPECT_DOUBLE_EQ(massGiven("16oz", "MASS"), 453.59237);
    EXPECT_EQ(massGiven("1 oz", "MASS"), 28.349523125);
}

TEST(MassGiven, TurnsVolumesIntoMassesByTheDensityOfTheLot) {
    Lot lot;
    lot.id = "rose";
    lot.density_gml = 1.25;
    EXPECT_EQ(massGiven("4ml", "MASS", {&lot}), 5);
    EXPECT_EQ(massGiven("4 mL", "MASS", {&lot}), 5);
    lot.density_gml.reset();
    EXPECT_EQ(refusal("4ml", {&lot}),
              "weigh: MASS is \"4ml\", a volume, and the density of lot rose is not recorded. Give "
              "the mass in g, or record first what a ml of it weighs, with rackbook enter lot rose "
              "density_gml=1.2 --reason \"weighed 10 ml\".");
    EXPECT_EQ(refusal("4ml"),
              "weigh: MASS is \"4ml\", a volume. Give the mass in g: only what comes straight from "
              "a lot can be given in ml, by the lot's density.");
}

TEST(MassGiven, RefusesWhatIsNoMass) {
    for (const char* text : {"", "g", "nan", "inf", "much", "1e5", "1e999", "1,2,3", "1.234,5",
                             "1 000", "--1", ",", "+4", " 4", "4 . 5", "1-2"})
        EXPECT_EQ(refusal(text), noMass(text)) << text;
    const std::string huge = std::string(60, '9') + std::string(400, '0');
    EXPECT_NE(refusal(huge).find("which is no mass"), std::string::npos);
    EXPECT_NE(refusal(std::string(308, '9') + "oz").find("which is no mass"), std::string::npos);
}

TEST(MassGiven, RefusesUnitsThatItDoesNotKnow) {
    for (const char* unit : {"lb", "gr", "G", "µg", "l", "kgs", "%"})
        EXPECT_EQ(
            refusal(std::string("2") + unit),
            std::string("weigh: MASS is \"2") + unit + "\", and \"" + unit +
                "\" is no unit of mass known here. Give it in g, kg, mg or oz, or in ml where "
                "the density of the lot is recorded.");
}

TEST(MassGiven, RefusesNothingAndLessUnlessNothingIsAnAnswer) {
    EXPECT_EQ(refusal("0"), "weigh: MASS is \"0\". Give a mass above 0 g.");
    EXPECT_EQ(refusal("0,00g"), "weigh: MASS is \"0,00g\". Give a mass above 0 g.");
    EXPECT_EQ(refusal("-0"), "weigh: MASS is \"-0\". Give a mass above 0 g.");
    EXPECT_EQ(refusal("-4.5g"), "weigh: MASS is \"-4.5g\". Give a mass above 0 g.");
    const MassTerms mayBeNothing{nullptr, true};
    EXPECT_EQ(massGiven("0g", "MASS", mayBeNothing), 0);
    EXPECT_EQ(refusal("-1", mayBeNothing), "weigh: MASS is \"-1\". Give a mass of 0 g or more.");
}

}  // namespace

}  // namespace rackbook
