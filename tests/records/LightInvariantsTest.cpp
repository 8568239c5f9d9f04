#include "records/LightInvariants.h"

#include <limits>

#include "ComplaintText.h"

namespace rackbook {
namespace {

using test::complaints;

EdtfDate date(const char* text) {
    return EdtfDate::parse(text);
}

TEST(LightInvariants, OfTheSkiesOfMonths) {
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.monthlySkies = {{3, 0.35, 0.65, {}}, {4, 0.1, 0.9, {}}};
              }),
              "");
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.monthlySkies = {{3, 0.3, 0.4, {}}, {4, 0.3, 0.4, {}}, {3, 0.2, 0.4, {}}};
              }),
              "/monthlySkies/2/month: the month stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.monthlySkies = {{3, 0.6, 0.41, {}}};
              }),
              "/monthlySkies/0/overcastShare: sunny and overcast days together are more than all "
              "days. Give each as a share of the month's days, 0 to 1.");
}

TEST(LightInvariants, OfGlassThatIsNotThere) {
    EXPECT_EQ(complaints<Place>([](Place& r) {
                  r.light.resize(2);
                  r.light[0].glass = Glass::laminated;
                  r.light[0].glassTransmittance = 0.8;
                  r.light[0].glassUltravioletTransmittance = 0.01;
                  r.light[1].glassUltravioletTransmittance = 0.3;
              }),
              "");
    EXPECT_EQ(complaints<Place>([](Place& r) {
                  r.light.resize(2);
                  r.light[1].glass = Glass::open;
                  r.light[1].glassTransmittance = 1;
                  r.light[1].glassUltravioletTransmittance = 1;
              }),
              "/light/1/glassTransmittance: glass is open, so nothing lets light through. Leave it "
              "out, or say which glass it is.\n"
              "/light/1/glassUltravioletTransmittance: glass is open, so nothing lets light "
              "through. Leave it out, or say which glass it is.");
}

TEST(LightInvariants, OfTheSkyOfADay) {
    const std::string one =
        "/sky: exactly one of sky and oktas is wanted. Give one, leave out the "
        "rest.";
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.sky.reset(); }), one);
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.oktas = 5; }), one);
    const std::string range = "/oktas: cloud is counted in eighths of the sky. Give 0 to 8.";
    EXPECT_EQ(complaints<Weather>([](Weather& r) {
                  r.sky.reset();
                  r.oktas = 8.01;
              }),
              range);
    EXPECT_EQ(complaints<Weather>([](Weather& r) {
                  r.sky.reset();
                  r.oktas = std::numeric_limits<double>::quiet_NaN();
              }),
              range);
    EXPECT_EQ(complaints<Weather>([](Weather& r) {
                  r.sky.reset();
                  r.oktas = 6.5;
              }),
              "");
}

TEST(LightInvariants, OfTheDayThatASkyIsOf) {
    const std::string day =
        "/on: the sky is recorded day by day. Give a single day, as 2026-03-18, and a record for "
        "each.";
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.on = date("2026-03"); }), day);
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.on = date("2026-03-18~"); }), day);
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.on = date("2026-03-18/2026-03-19"); }), day);
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.on = date("2026-03-18/2026-03-18"); }), day);
    EXPECT_EQ(complaints<Weather>([](Weather& r) { r.on = date("2026-03-18T13:00"); }), "");
}

TEST(LightInvariants, OfWhatWasMeasured) {
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.exposure_lxh.reset(); }),
              "/exposure_lxh: a metering says how much light there was. Add exposure_lxh, "
              "nearUltraviolet_Whm2 or both.");
    EXPECT_EQ(complaints<Metering>([](Metering& r) {
                  r.exposure_lxh = std::numeric_limits<double>::infinity();
                  r.nearUltraviolet_Whm2 = -0.1;
              }),
              "/exposure_lxh: it is no amount of light. Give lux hours, 0 or more.\n"
              "/nearUltraviolet_Whm2: it is no amount of ultraviolet. Give watt hours per square "
              "metre, 0 or more.");
    EXPECT_EQ(complaints<Metering>([](Metering& r) {
                  r.exposure_lxh = 0;
                  r.nearUltraviolet_Whm2 = 0;
              }),
              "");
}

TEST(LightInvariants, OfTheTimeInWhichItWasMeasured) {
    const std::string minute =
        "what was measured has its time to the minute. Write it as 2026-03-18T09:30.";
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.from = date("2026-03-19"); }),
              "/from: " + minute);
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.to = date("2026-03"); }), "/to: " + minute);
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.to = r.from; }),
              "/to: it ends before it starts. Correct one of the two.");
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.to = date("2026-03-20T10:30"); }), "");
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.to = date("2026-03-20T10:31"); }),
              "/to: it is longer than a day. Make a record for each day.");
}

// The sample lasts from 9:30 to 17:00.
TEST(LightInvariants, OfHowMuchOfTheTimeTheInstrumentSaw) {
    const std::string part =
        "/covered_h: it is not a part of the time from start to end. Give hours above 0, and no "
        "more than the whole time.";
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.covered_h = 7.5; }), "");
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.covered_h = 7.51; }), part);
    EXPECT_EQ(complaints<Metering>([](Metering& r) { r.covered_h = 0; }), part);
}

TEST(LightInvariants, TellEverythingThatIsWrongWithAMetering) {
    EXPECT_EQ(complaints<Metering>([](Metering& r) {
                  r.to = date("2026-03-21T09:30");
                  r.covered_h = 49;
                  r.exposure_lxh.reset();
              }),
              "/to: it is longer than a day. Make a record for each day.\n"
              "/covered_h: it is not a part of the time from start to end. Give hours above 0, and "
              "no more than the whole time.\n"
              "/exposure_lxh: a metering says how much light there was. Add exposure_lxh, "
              "nearUltraviolet_Whm2 or both.");
}

TEST(LightRules, HoldTogether) {
    const auto rulesOf = [](const char* name, double value) {
        HouseRule rule;
        rule.rule = name;
        rule.value = value;
        return std::vector<HouseRule>{rule};
    };
    EXPECT_TRUE(lightRuleComplaints({}).empty());
    EXPECT_TRUE(lightRuleComplaints(rulesOf("skySunnyShare", 0.65)).empty());
    EXPECT_EQ(lightRuleComplaints(rulesOf("skySunnyShare", 0.7)).size(), 1u);
    EXPECT_EQ(lightRuleComplaints(rulesOf("lookChance", 0.9)).size(), 1u);
    EXPECT_EQ(lightRuleComplaints(rulesOf("colourLooks", 1.5)).size(), 1u);
}

TEST(LightInvariants, OfUnitsThatWereMixedUp) {
    const auto of = [](std::optional<double> exposure_lxh, std::optional<double> ultraviolet_Whm2,
                       std::optional<double> covered_h) {
        Metering r;
        r.id = "m";
        r.place = {"rack"};
        r.from = date("2026-03-18T09:00");
        r.to = date("2026-03-18T11:00");
        r.exposure_lxh = exposure_lxh;
        r.nearUltraviolet_Whm2 = ultraviolet_Whm2;
        r.covered_h = covered_h;
        return test::textOfAll(r);
    };
    EXPECT_EQ(of(400'000, 240, {}), "");
    EXPECT_EQ(
        of(400'002, {}, {}),
        "/exposure_lxh: that is a mean of 200001 lx; full sun stays below 200000 lx. Give lux "
        "hours: lux seconds are divided by 3600.");
    EXPECT_EQ(of({}, 242, {}),
              "/nearUltraviolet_Whm2: that is a mean of 121 W/m²; the UV-A of full sun stays below "
              "120 W/m². Give Wh/m²: mWh/m² are divided by 1000, µWh/cm² by 100, J/m² by 3600.");
    // In the half hour that was seen.
    EXPECT_EQ(of(100'000, {}, 0.5), "");
    EXPECT_NE(of(100'010, {}, 0.5), "");
}

}  // namespace
}  // namespace rackbook
