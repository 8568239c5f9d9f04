#include "calc/StudioLight.h"

#include "StudioFixture.h"
#include "base/Error.h"

namespace rackbook {
namespace {

using StudioLightTest = StudioTest;

Weather weatherOn(const std::string& day, std::optional<Sky> sky, std::optional<double> oktas) {
    Weather weather;
    weather.id = "w-" + day;
    weather.on = build::on(day);
    weather.sky = sky;
    weather.oktas = oktas;
    return weather;
}

TEST_F(StudioLightTest, KnowsNothingWithoutItsPlaceOnEarth) {
    m_studio.latitude_deg.reset();
    m_studio.longitude_deg.reset();
    StudioLight& light = lightAsOf("2026-06-01");
    EXPECT_FALSE(light.isKnown());
    EXPECT_EQ(light.model(), nullptr);
}

TEST_F(StudioLightTest, HasNoModelBeforeItLearns) {
    StudioLight light(m_studio, rules, book.records.of<Place>(), {}, {});
    EXPECT_TRUE(light.isKnown());
    EXPECT_EQ(light.model(), nullptr);
    light.learnFrom(historyOf(book.records), rules, 0);
    ASSERT_NE(light.model(), nullptr);
    EXPECT_TRUE(light.model()->wanted.looks().empty());
    EXPECT_EQ(&light.model()->ledger, &light.ledger());
}

TEST_F(StudioLightTest, RefusesAZoneThatTheSystemDoesNotKnow) {
    m_studio.timeZone = "Shed/Bench";
    EXPECT_THROW(lightAsOf("2026-06-01"), InputError);
}

TEST_F(StudioLightTest, TakesSkiesFromRulesMonthsAndNotes) {
    m_studio.monthlySkies = {{12, 0.1, 0.7, {}}};
    rules = HouseRules({ruleOf("skySunnyShare", 0.2), ruleOf("skyOvercastShare", 0.5)});
    const Skies skies = skiesOf(m_studio, rules,
                                {weatherOn("2026-06-01", Sky::overcast, {}),
                                 weatherOn("2026-06-02", {}, 3), weatherOn("2026-06-03", {}, 0)});
    EXPECT_EQ(skies.usual.sunny, 0.2);
    EXPECT_EQ(skies.usual.overcast, 0.5);
    ASSERT_TRUE(skies.ofMonth[11]);
    EXPECT_EQ(skies.ofMonth[11]->overcast, 0.7);
    EXPECT_FALSE(skies.ofMonth[0]);
    ASSERT_EQ(skies.ofDay.size(), 3u);
    const std::int64_t first = daysFromCivil({2026, 6, 1});
    EXPECT_EQ(skies.ofDay.at(first).best, oktasOf(Sky::overcast).best);
    EXPECT_EQ(skies.ofDay.at(first + 1).low, 2);
    EXPECT_EQ(skies.ofDay.at(first + 1).best, 3);
    EXPECT_EQ(skies.ofDay.at(first + 1).high, 4);
    EXPECT_EQ(skies.ofDay.at(first + 2).low, 0);
    EXPECT_EQ(skies.ofDay.at(first + 2).high, 1);
}

TEST_F(StudioLightTest, WeatherMeteringsAndTheZoneReachTheLedger) {
    const int rack = book.records.indexOf<Place>("rack");
    const auto day = [&] {
        return lightAsOf("2026-07-01")
            .ledger()
            .at(rack, build::on("2026-06-01").earliest(), build::on("2026-06-02").earliest())
            .nearUltraviolet_Whm2.best;
    };
    const double usually = day();
    book.add(weatherOn("2026-06-01", Sky::overcast, {}));
    EXPECT_LT(day(), usually);
    Metering metering;
    metering.id = "m";
    metering.place = {"rack"};
    metering.from = build::on("2026-06-01T00:00");
    metering.to = build::on("2026-06-02T00:00");
    metering.nearUltraviolet_Whm2 = 12.5;
    book.add(metering);
    EXPECT_NEAR(day(), 12.5, 1e-6);
    m_studio.timeZone = "America/New_York";
    // The clock's morning there is the middle of a Danish day.
    DoseLedger& ledger = lightAsOf("2026-07-01").ledger();
    const double morning = ledger
                               .at(rack, build::on("2026-06-05T00:00").earliest(),
                                   build::on("2026-06-05T08:00").earliest())
                               .nearUltraviolet_Whm2.best;
    const double whole = ledger
                             .at(rack, build::on("2026-06-05T00:00").earliest(),
                                 build::on("2026-06-06T00:00").earliest())
                             .nearUltraviolet_Whm2.best;
    EXPECT_GT(morning, 0.5 * whole);
}

}  // namespace
}  // namespace rackbook
