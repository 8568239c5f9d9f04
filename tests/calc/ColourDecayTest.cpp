#include "calc/ColourDecay.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <sstream>

#include "FactRows.h"
#include "base/Error.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

std::vector<DecayPoint> pointsIn(const std::string& text) {
    std::vector<DecayPoint> points;
    std::istringstream parts(text);
    for (std::string part; std::getline(parts, part, ';');) {
        const std::size_t colon = part.find(':');
        points.push_back(
            {FactRow::numberIn(part.substr(0, colon)), FactRow::numberIn(part.substr(colon + 1))});
    }
    return points;
}

ColourDecay decayOf(const std::string& points, double wanted_dE00 = 1, double noise_dE00 = 0.3) {
    return colourDecay({pointsIn(points), wanted_dE00, noise_dE00});
}

// How the expected values were made stands in the table.
TEST(ColourDecay, AgreesWithAnotherProgram) {
    for (const FactRow& row : factRows("colour-decay.csv")) {
        SCOPED_TRACE(row.text("name"));
        const ColourDecay found =
            decayOf(row.text("points"), row.number("wanted"), row.number("noise"));
        const auto expectClose = [&](double value, const char* column, double relative) {
            EXPECT_NEAR(value, row.number(column), relative * row.number(column)) << column;
        };
        EXPECT_EQ(found.answer, DecayAnswer::told);
        expectClose(found.start_dE00, "start", 1e-5);
        expectClose(found.scale_sunnyDays, "scale", 1e-5);
        expectClose(found.residualSpread_dE00, "residual", 1e-5);
        expectClose(found.enough_sunnyDays.best, "best", 1e-5);
        expectClose(found.enough_sunnyDays.low, "low", 1e-4);
        expectClose(found.enough_sunnyDays.high, "high", 1e-4);
    }
}

// Certified by NIST for the data set DanWood: b1 and b2 of y = b1·x^b2 (from memory).
TEST(ColourDecay, AgreesWithACertifiedFit) {
    const FactRow row = factRows("colour-decay.csv").front();
    ASSERT_EQ(row.text("name"), "danwood");
    const ColourDecay found = decayOf(row.text("points"), 3, 0);
    EXPECT_NEAR(1 / found.scale_sunnyDays, 3.8604055871, 1e-5);
    EXPECT_NEAR(found.start_dE00 / std::pow(1.7, 3.8604055871), 0.76886226176, 1e-5);
    EXPECT_NEAR(found.residualSpread_dE00, 0.032853114039, 1e-8);
}

TEST(ColourDecay, FindsAnExactCurve) {
    std::vector<DecayPoint> points;
    for (const double dose : {4.0, 0.0, 1.0, 9.0, 2.0})
        points.push_back({dose, 6 * std::exp(-dose / 2.5)});
    const ColourDecay found = colourDecay({points, 1, 0});
    EXPECT_EQ(found.points, 5u);
    EXPECT_NEAR(found.start_dE00, 6, 1e-5);
    EXPECT_NEAR(found.scale_sunnyDays, 2.5, 1e-5);
    EXPECT_LT(found.residualSpread_dE00, 1e-5);
    const double enough = 2.5 * std::log(6);
    EXPECT_NEAR(found.enough_sunnyDays.low, enough, 1e-3);
    EXPECT_NEAR(found.enough_sunnyDays.best, enough, 1e-5);
    EXPECT_NEAR(found.enough_sunnyDays.high, enough, 1e-3);
}

// Readings down at the floor are no reason to think that colour keeps changing, and hardly move
// the scale, however many there are.
TEST(ColourDecay, LearnsLittleAtTheFloor) {
    const std::string falling = "0:6;1:4;2:2.7;3:1.8";
    const ColourDecay before = decayOf(falling);
    const ColourDecay after = decayOf(falling + ";20:0.3;30:0.3;40:0.3;50:0.3;60:0.3");
    EXPECT_NEAR(after.scale_sunnyDays, before.scale_sunnyDays, 0.02 * before.scale_sunnyDays);
    EXPECT_NEAR(after.enough_sunnyDays.best, before.enough_sunnyDays.best, 0.1);
}

// Readings with noise of known size in three directions: 400 trials each, intervals of 90 %, to 2.7
// standard errors of that share (0.015). The interval is careful where noise is stated.
TEST(ColourDecay, HoldsTheTruthAsOftenAsItSays) {
    std::mt19937 random(31);
    constexpr double noise = 0.3;
    std::normal_distribution<double> axis(0, noise / std::sqrt(3.0));
    constexpr int trials = 400;
    const double truth = 2 * std::log(5);
    int held = 0;
    int heldByResiduals = 0;
    for (int i = 0; i < trials; ++i) {
        std::vector<DecayPoint> points;
        for (const double dose : {0.0, 0.7, 1.4, 2.1, 2.8, 3.5, 4.2, 6.0}) {
            const double left = 5 * std::exp(-dose / 2);
            points.push_back({dose, std::hypot(left + axis(random), axis(random), axis(random))});
        }
        const auto holds = [&](const ColourDecay& decay) {
            return decay.enough_sunnyDays.low <= truth && truth <= decay.enough_sunnyDays.high;
        };
        const ColourDecay found = colourDecay({points, 1, noise});
        EXPECT_NEAR(found.enough_sunnyDays.best, truth, 1.2);
        held += holds(found);
        for (DecayPoint& point : points)
            point.fromFinal_dE00 = std::abs(5 * std::exp(-point.dose_sunnyDays / 2) + axis(random));
        heldByResiduals += holds(colourDecay({points, 1, 0}));
    }
    EXPECT_GE(held, 0.9 * trials);
    EXPECT_NEAR(heldByResiduals, 0.9 * trials, 0.04 * trials);
}

TEST(ColourDecay, SaysWhatCannotBeTold) {
    EXPECT_EQ(decayOf("").answer, DecayAnswer::tooFewDoses);
    EXPECT_EQ(decayOf("0:5;2:3;2:3.1;0:4.9").answer, DecayAnswer::tooFewDoses);
    EXPECT_FALSE(ColourDecay(decayOf("0:5;2:3")).enough_sunnyDays.isKnown());
    EXPECT_EQ(decayOf("0:5;2:5.1;4:4.9").answer, DecayAnswer::noFall);
    EXPECT_EQ(decayOf("0:1;2:3;4:6").answer, DecayAnswer::noFall);
    EXPECT_EQ(decayOf("0:3;1:3;2:3", 1, 0).answer, DecayAnswer::noFall);
    EXPECT_EQ(decayOf("0:0.8;2:0.4;4:0.3").answer, DecayAnswer::alreadyBelow);
    EXPECT_EQ(decayOf("0:0;2:0;4:0").answer, DecayAnswer::alreadyBelow);
    EXPECT_EQ(decayOf("0:6;2:3;4:1.5;6:0.8", 0.2, 0.3).answer, DecayAnswer::wantedIsNoise);
}

// The less the noise leaves of a weak fall, the farther away the high bound, until there is no
// fall.
TEST(ColourDecay, SaysLessTheNoisierReadingsAre) {
    double before = 0;
    for (const double noise_dE00 : {0.1, 0.3, 0.4, 0.43}) {
        const ColourDecay found = decayOf("0:3.2;1:2.6;2:2.2", 0.9, noise_dE00);
        EXPECT_EQ(found.answer, DecayAnswer::told);
        EXPECT_GT(found.enough_sunnyDays.high, before);
        before = found.enough_sunnyDays.high;
    }
    EXPECT_GT(before, 50);
    EXPECT_EQ(decayOf("0:3.2;1:2.6;2:2.2", 0.9, 0.44).answer, DecayAnswer::noFall);
}

TEST(ColourDecay, GoesWithTheUnitOfDose) {
    const std::vector<DecayPoint> points = pointsIn("0:6.3;0.5:4.9;1:4.4;2:2.2;3:1.9;5:0.4;8:0.5");
    const ColourDecay found = colourDecay({points, 1, 0.3});
    for (const double factor : {1e-6, 0.3, 1e5}) {
        std::vector<DecayPoint> scaled = points;
        for (DecayPoint& point : scaled)
            point.dose_sunnyDays *= factor;
        const Estimate other = colourDecay({scaled, 1, 0.3}).enough_sunnyDays;
        EXPECT_NEAR(other.low / factor, found.enough_sunnyDays.low, 1e-4);
        EXPECT_NEAR(other.best / factor, found.enough_sunnyDays.best, 1e-4);
        EXPECT_NEAR(other.high / factor, found.enough_sunnyDays.high, 1e-4);
    }
}

TEST(ColourDecay, KeepsItsBoundsInOrderWhateverWasRead) {
    std::mt19937 random(32);
    std::uniform_real_distribution<double> any(0, 1);
    int told = 0;
    for (int i = 0; i < 300; ++i) {
        DecayQuestion question{{}, 0.2 + 2 * any(random), i % 3 == 0 ? 0 : any(random)};
        const double unit = std::pow(10, 12 * any(random) - 6);
        const int readings = 3 + i % 9;
        for (int k = 0; k < readings; ++k)
            question.points.push_back({unit * std::floor(8 * any(random)), 9 * any(random)});
        std::sort(question.points.begin(), question.points.end(),
                  [](const auto& a, const auto& b) { return a.fromFinal_dE00 > b.fromFinal_dE00; });
        // Every other set falls with the dose.
        for (int k = 0; i % 2 == 0 && k < readings; ++k)
            question.points[static_cast<std::size_t>(k)].dose_sunnyDays = unit * k;
        const ColourDecay found = colourDecay(question);
        if (found.answer != DecayAnswer::told)
            continue;
        ++told;
        EXPECT_GE(found.enough_sunnyDays.low, 0);
        EXPECT_LE(found.enough_sunnyDays.low, found.enough_sunnyDays.best);
        EXPECT_LE(found.enough_sunnyDays.best, found.enough_sunnyDays.high);
        EXPECT_GT(found.scale_sunnyDays, 0);
        EXPECT_GT(found.start_dE00, question.wanted_dE00);
    }
    EXPECT_GT(told, 100);
}

TEST(ColourDecay, StandsExtremeDoses) {
    for (const char* points :
         {"0:5;5e-324:3;1e-323:1", "0:5;1e-300:3;1e9:0.2", "1e9:5;999999999:3;999999998:4.5",
          "1000:5;1000.1:3;1000.2:1.9", "0:1e9;1:1e-9;2:0"})
        EXPECT_LE(decayOf(points).enough_sunnyDays.low, 2e9) << points;
}

TEST(ColourDecay, RefusesWhatCannotBe) {
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    const auto refusal = [](const DecayQuestion& question) {
        return messageOf<InputError>([&] { colourDecay(question); });
    };
    EXPECT_EQ(refusal({{{0, 1}, {-1, 2}}, 1, 0.3}),
              "reading 2: it is 2 from the final colour after -1 sunny days. Give two numbers of 0 "
              "or more, at most a thousand million.");
    for (const DecayPoint& wrong :
         {DecayPoint{unknown, 1}, {infinite, 1}, {1, unknown}, {1, -1}, {1, infinite}})
        EXPECT_EQ(refusal({{wrong}, 1, 0.3}).substr(0, 10), "reading 1:");
    EXPECT_EQ(refusal({{}, 0, 0.3}), "wanted difference: it is 0. Give one above 0.");
    EXPECT_EQ(refusal({{}, unknown, 0.3}), "wanted difference: it is nan. Give one above 0.");
    EXPECT_EQ(refusal({{}, 1, -0.1}),
              "noise of readings: it is -0.1. Give a difference of 0 or more.");
}

}  // namespace
}  // namespace rackbook
