#include "calc/GlassUltraviolet.h"

#include <gtest/gtest.h>

#include "SkyFixture.h"

namespace rackbook {
namespace {

const Glass fromOpenToLaminated[] = {Glass::open, Glass::clearSingle, Glass::clearDouble,
                                     Glass::coatedDouble, Glass::laminated};

Light behind(std::optional<Glass> glass) {
    Light light;
    light.lightKind = LightKind::daylight;
    light.glass = glass;
    return light;
}

TEST(GlassUltraviolet, IsAllOfItWhereThereIsNoGlass) {
    const Estimate open = ultravioletThroughGlass(behind(Glass::open));
    EXPECT_EQ(open.low, 1);
    EXPECT_EQ(open.high, 1);
}

// Each pane and each coating takes more away; a sheet of plastic between two panes nearly all of it
// (common knowledge, no source).
TEST(GlassUltraviolet, GetsLessFromOpenToLaminated) {
    double before = 2;
    for (const Glass glass : fromOpenToLaminated) {
        const Estimate through = ultravioletThroughGlass(behind(glass));
        test::expectOrdered(through);
        EXPECT_LT(through.best, before);
        EXPECT_LE(through.high, 1);
        before = through.best;
    }
}

// From memory of makers' tables by EN 410: clear float glass of 4 mm lets through about 0.65 of the
// ultraviolet, two panes of it about 0.45, laminated glass less than 0.01.
TEST(GlassUltraviolet, HoldsWhatMakersState) {
    const auto holds = [](Glass glass, double share) {
        const Estimate through = ultravioletThroughGlass(behind(glass));
        return through.low <= share && share <= through.high;
    };
    EXPECT_TRUE(holds(Glass::clearSingle, 0.65));
    EXPECT_TRUE(holds(Glass::clearDouble, 0.45));
    EXPECT_TRUE(holds(Glass::laminated, 0.005));
    EXPECT_LE(ultravioletThroughGlass(behind(Glass::laminated)).best, 0.02);
    EXPECT_LE(ultravioletThroughGlass(behind(Glass::filtering)).best, 0.02);
}

// "The role of glass as a barrier against the transmission of ultraviolet radiation: an
// experimental study", Photodermatology, Photoimmunology & Photomedicine 25 (2009), the abstract:
// of UV-A from a lamp, smooth ordinary glass let through the most, 74.3 %; laminated glass, and
// glass with a film that keeps the sun out, let through none.
TEST(GlassUltraviolet, HoldsWhatWasMeasuredBehindPanes) {
    const Estimate clear = ultravioletThroughGlass(behind(Glass::clearSingle));
    EXPECT_LE(clear.low, 0.743);
    EXPECT_GE(clear.high, 0.743);
    for (const Glass glass : {Glass::laminated, Glass::filtering}) {
        EXPECT_LE(ultravioletThroughGlass(behind(glass)).low, 0.005);
        EXPECT_LE(ultravioletThroughGlass(behind(glass)).high, 0.05);
    }
}

// Of glass that nobody noted, anything but what keeps ultraviolet out on purpose.
TEST(GlassUltraviolet, IsWideWhereNobodyNotedTheGlass) {
    const Estimate any = ultravioletThroughGlass(behind(std::nullopt));
    test::expectOrdered(any);
    for (const Glass glass : {Glass::clearSingle, Glass::clearDouble, Glass::coatedDouble}) {
        EXPECT_LE(any.low, ultravioletThroughGlass(behind(glass)).best);
        EXPECT_GE(any.high, ultravioletThroughGlass(behind(glass)).best);
    }
    EXPECT_GT(any.low, ultravioletThroughGlass(behind(Glass::laminated)).best);
}

TEST(GlassUltraviolet, IsAsStatedWhereItIsStated) {
    Light light = behind(Glass::laminated);
    light.glassUltravioletTransmittance = 0.42;
    EXPECT_EQ(ultravioletThroughGlass(light).best, 0.42);
    EXPECT_EQ(ultravioletThroughGlass(light).low, 0.42);
    light.glass.reset();
    EXPECT_EQ(ultravioletThroughGlass(light).high, 0.42);
}

// By hand: the factor of ultraviolet is that of light, times 0.42/0.84, times 0.8 for the walls.
TEST(GlassUltraviolet, IsSetAgainstTheLightThatGetsThroughTheSameGlass) {
    Light light = behind(Glass::clearDouble);
    light.glassUltravioletTransmittance = 0.42;
    light.glassTransmittance = 0.84;
    const Estimate inRoom = ultravioletInRoom(light);
    EXPECT_NEAR(inRoom.best, 0.5 * 0.8, 1e-12);
    test::expectOrdered(inRoom);
    // Walls alone where no glass takes anything.
    EXPECT_NEAR(ultravioletInRoom(behind(Glass::open)).best, 0.8, 1e-12);
    EXPECT_LE(ultravioletInRoom(behind(Glass::open)).high, 1);
}

TEST(GlassUltraviolet, StaysFiniteBehindGlassThatLetsNothingThrough) {
    Light light = behind(Glass::laminated);
    light.glassTransmittance = 0;
    light.glassUltravioletTransmittance = 0;
    EXPECT_EQ(ultravioletInRoom(light).high, 0);
    light.glassUltravioletTransmittance.reset();
    test::expectOrdered(ultravioletInRoom(light));
    EXPECT_TRUE(std::isfinite(ultravioletInRoom(light).high));
}

TEST(GlassUltraviolet, LeavesTheSameOrderInARoom) {
    double before = 2;
    for (const Glass glass : fromOpenToLaminated) {
        EXPECT_LT(ultravioletInRoom(behind(glass)).best, before);
        before = ultravioletInRoom(behind(glass)).best;
    }
}

// Dark glass keeps out light and ultraviolet alike; only what was measured of both says otherwise.
TEST(GlassUltraviolet, TintedGlassBringsNoMoreThanClearGlass) {
    Light tinted;
    tinted.lightKind = LightKind::daylight;
    tinted.glassTransmittance = 0.10;
    Light clear = tinted;
    clear.glassTransmittance.reset();
    EXPECT_LE(ultravioletInRoom(tinted).best, ultravioletInRoom(clear).best + 1e-12);
}

// Lux behind glass that filters are not lux behind clear glass.
TEST(GlassUltraviolet, LuxBehindFilteringGlassHoldNextToNone) {
    Light filtered;
    filtered.lightKind = LightKind::daylight;
    filtered.glass = Glass::filtering;
    EXPECT_LT(ultravioletBesideClearGlass(filtered), 0.05);
    Light clear = filtered;
    clear.glass = Glass::clearSingle;
    EXPECT_NEAR(ultravioletBesideClearGlass(clear), 1, 1e-12);
    clear.lightKind = LightKind::outdoors;
    EXPECT_GT(ultravioletBesideClearGlass(clear), 1);
}

}  // namespace
}  // namespace rackbook
