#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;
using build::on;

void addSky(Book& book, const std::string& id, const char* day, Sky sky) {
    Weather weather;
    weather.id = id;
    weather.on = on(day);
    weather.sky = sky;
    book.add(weather);
}

Metering metering(const std::string& id, const char* from, const char* to,
                  const char* place = "rack") {
    Metering r;
    r.id = id;
    r.place = {place};
    r.from = on(from);
    r.to = on(to);
    r.exposure_lxh = 900;
    return r;
}

TEST(WeatherTwice, FindsADayThatWasRecordedAgain) {
    Book book = soundBook();
    addSky(book, "sky-a", "2026-03-18", Sky::sunny);
    addSky(book, "sky-b", "2026-03-18T13:00", Sky::overcast);
    Weather counted;
    counted.id = "sky-c";
    counted.on = on("2026-03-18");
    counted.oktas = 3;
    book.add(counted);
    EXPECT_EQ(
        found(book, "weather-twice"),
        (Texts{"warning: /on weather sky-b: weather sky-a is about this day too; its sky is sunny, "
               "this one's is overcast (2026-03-18T13:00). Strike out the one that does not hold.",
               "warning: /on weather sky-c: weather sky-a is about this day too; its sky is sunny, "
               "this one's is given in oktas (2026-03-18). Strike out the one that does not "
               "hold."}));
}

TEST(WeatherTwice, LeavesTheDaysBesideIt) {
    Book book = soundBook();
    addSky(book, "sky-a", "2026-03-18T23:59", Sky::sunny);
    addSky(book, "sky-b", "2026-03-19T00:00", Sky::overcast);
    addSky(book, "sky-c", "2025-03-18", Sky::overcast);
    EXPECT_EQ(found(book, "weather-twice"), Texts{});
}

TEST(MeteringOverlap, FindsTimesOfOnePlaceThatOverlap) {
    Book book = soundBook();
    book.add(metering("late", "2026-03-18T11:59", "2026-03-18T14:00"));
    book.add(metering("whole", "2026-03-18T08:00", "2026-03-18T20:00"));
    book.add(metering("short", "2026-03-18T09:00", "2026-03-18T10:00"));
    EXPECT_EQ(found(book, "metering-overlap"),
              (Texts{"warning: /from metering short: metering whole measured the same at place "
                     "rack until 2026-03-18T20:00 (2026-03-18T09:00). Correct the times, or strike "
                     "out one of the two.",
                     "warning: /from metering late: metering whole measured the same at place rack "
                     "until 2026-03-18T20:00 (2026-03-18T11:59). Correct the times, or strike out "
                     "one of the two."}));
}

TEST(MeteringOverlap, LeavesTimesThatMeetAndOtherPlacesAndOtherQuantities) {
    Book book = soundBook();
    book.add(metering("morning", "2026-03-18T08:00", "2026-03-18T12:00"));
    book.add(metering("afternoon", "2026-03-18T12:00", "2026-03-18T16:00"));
    book.add(metering("elsewhere", "2026-03-18T08:00", "2026-03-18T16:00", "drawer"));
    Metering ultraviolet = metering("uv", "2026-03-18T08:00", "2026-03-18T16:00");
    ultraviolet.exposure_lxh.reset();
    ultraviolet.nearUltraviolet_Whm2 = 1.5;
    book.add(ultraviolet);
    EXPECT_EQ(found(book, "metering-overlap"), Texts{});
    ultraviolet.id = "uv-again";
    ultraviolet.from = on("2026-03-18T15:59");
    ultraviolet.to = on("2026-03-18T17:00");
    book.add(ultraviolet);
    EXPECT_EQ(found(book, "metering-overlap").size(), 1u);
}

TEST(MeteringInDark, FindsLightWhereThePlaceIsDark) {
    Book book = soundBook();
    book.add(metering("seen", "2026-03-18T08:00", "2026-03-18T12:00", "drawer"));
    EXPECT_EQ(found(book, "metering-in-dark"),
              (Texts{"warning: /place metering seen: place drawer is declared dark: what was "
                     "measured counts to the dose, but the time counts as no days in light "
                     "(drawer). Correct the light of the place, or the place of the metering."}));
}

TEST(MeteringInDark, LeavesLitPlacesAndWhatADarkOneShows) {
    Book book = soundBook();
    book.add(metering("lit", "2026-03-18T08:00", "2026-03-18T12:00"));
    Metering dark = metering("dark", "2026-03-18T08:00", "2026-03-18T12:00", "drawer");
    dark.exposure_lxh = 0.4;
    book.add(dark);
    book.place("shutters", PlaceKind::rack, [](Place& r) {
        r.light.resize(2);
        r.light[0].lightKind = LightKind::dark;
        r.light[1].from = on("2026-03-18T10:00");
        r.light[1].lightKind = LightKind::daylight;
    });
    book.add(metering("opened", "2026-03-18T08:00", "2026-03-18T12:00", "shutters"));
    EXPECT_EQ(found(book, "metering-in-dark"), Texts{});
}

void addStudio(Book& book, std::optional<double> latitude_deg = 55.68) {
    rackbook::Book studio;
    studio.id = "book";
    studio.studio = "North shed";
    studio.timeZone = "Europe/Copenhagen";
    studio.latitude_deg = latitude_deg;
    studio.longitude_deg = 12.57;
    book.add(studio);
}

Metering ofLight(const char* from, const char* to, double exposure_lxh,
                 const char* place = "rack") {
    Metering r = metering("m", from, to, place);
    r.exposure_lxh = exposure_lxh;
    return r;
}

Metering ofUltraviolet(const char* from, const char* to, double nearUltraviolet_Whm2) {
    Metering r = metering("uv", from, to);
    r.exposure_lxh.reset();
    r.nearUltraviolet_Whm2 = nearUltraviolet_Whm2;
    return r;
}

Texts beyondSun(const Metering& metering, std::optional<double> latitude_deg = 55.68) {
    Book book = soundBook();
    addStudio(book, latitude_deg);
    book.place("lamps", PlaceKind::rack, LightKind::artificial);
    book.place("anywhere", PlaceKind::rack);
    book.place("yard", PlaceKind::rack, LightKind::outdoors);
    book.place("show", PlaceKind::gallery, LightKind::daylight);
    book.place("show-wall", PlaceKind::wall, [](Place& r) {
        r.within = Ref<Place>{"show"};
        r.light.emplace_back();
        r.light.back().lightKind = LightKind::daylight;
    });
    book.add(metering);
    return found(book, "metering-beyond-sun");
}

TEST(MeteringBeyondSun, FindsLightAtMidnight) {
    EXPECT_EQ(beyondSun(ofLight("2025-06-02T00:00", "2025-06-02T03:00", 150'000)),
              Texts{"warning: /exposure_lxh metering m: a mean of 50000 lx at place rack from "
                    "2025-06-02T00:00 to 2025-06-02T03:00 is 25 times the most that the sun over "
                    "the studio and lamps beside it give in that time, 2000 lx "
                    "(2025-06-02T00:00). Check the unit, the times and the place. Correct what is "
                    "wrong, or strike the metering out."});
    EXPECT_EQ(beyondSun(ofLight("2025-06-02T00:00", "2025-06-02T03:00", 150'000, "yard")).size(),
              1u);
    // As much as lamps give.
    EXPECT_EQ(beyondSun(ofLight("2025-06-02T00:00", "2025-06-02T03:00", 6'000)), Texts{});
}

TEST(MeteringBeyondSun, FindsMoreThanFullSunAndLightInThePolarNight) {
    EXPECT_EQ(beyondSun(ofLight("2025-06-02T09:00", "2025-06-02T17:00", 8 * 200'000.0)).size(), 1u);
    EXPECT_EQ(beyondSun(ofLight("2025-06-02T09:00", "2025-06-02T17:00", 8 * 110'000.0)), Texts{});
    EXPECT_EQ(beyondSun(ofLight("2025-12-10T10:00", "2025-12-10T14:00", 200'000), 78).size(), 1u);
    EXPECT_EQ(beyondSun(ofLight("2025-06-10T10:00", "2025-06-10T14:00", 200'000), 78), Texts{});
}

TEST(MeteringBeyondSun, FindsSunlightThatWasTakenForUltraviolet) {
    EXPECT_EQ(beyondSun(ofUltraviolet("2025-01-10T08:00", "2025-01-10T16:00", 480)),
              Texts{"warning: /nearUltraviolet_Whm2 metering uv: a mean of 60 W/m² at place rack "
                    "from 2025-01-10T08:00 to 2025-01-10T16:00 is 2.2 times the most that the sun "
                    "over the studio and lamps beside it give in that time, 28 W/m² "
                    "(2025-01-10T08:00). Check the unit, the times and the place; near ultraviolet "
                    "is UV-A alone, not all of sunlight. Correct what is wrong, or strike the "
                    "metering out."});
    EXPECT_EQ(beyondSun(ofUltraviolet("2025-06-10T08:00", "2025-06-10T16:00", 400)), Texts{});
}

// The instrument saw an hour of a day and a night: it may have been the brightest.
TEST(MeteringBeyondSun, TakesAPartlySeenTimeAtItsBrightest) {
    Metering seen = ofLight("2025-06-02T00:00", "2025-06-02T12:00", 100'000);
    seen.covered_h = 1;
    EXPECT_EQ(beyondSun(seen), Texts{});
    seen.covered_h = 0.6;
    EXPECT_EQ(beyondSun(seen).size(), 1u);
}

// The clocks are put back at 3: three hours go by from 01:30 to 03:30.
TEST(MeteringBeyondSun, CountsTheHoursThatWentBy) {
    EXPECT_EQ(beyondSun(ofLight("2025-10-26T01:30", "2025-10-26T03:30", 5'900)), Texts{});
    EXPECT_EQ(beyondSun(ofLight("2025-10-26T01:30", "2025-10-26T03:30", 6'100)).size(), 1u);
}

TEST(MeteringBeyondSun, LeavesOtherLightAndOtherSkies) {
    for (const char* place : {"lamps", "anywhere", "drawer", "show", "show-wall", "nowhere"})
        EXPECT_EQ(beyondSun(ofLight("2025-06-02T00:00", "2025-06-02T03:00", 150'000, place)),
                  Texts{})
            << place;
    EXPECT_EQ(beyondSun(ofLight("2025-06-02T00:00", "2025-06-02T03:00", 150'000), std::nullopt),
              Texts{});
    // Before the sun's tables begin.
    EXPECT_EQ(beyondSun(ofLight("1899-06-02T00:00", "1899-06-02T03:00", 150'000)), Texts{});
}

TEST(MeteringBeyondLight, FindsMoreUltravioletThanGoesWithTheLight) {
    Book book = soundBook();
    Metering both = ofLight("2026-03-18T09:00", "2026-03-18T17:00", 6'800);
    both.nearUltraviolet_Whm2 = 700;
    book.add(both);
    EXPECT_EQ(found(book, "metering-beyond-light"),
              Texts{"warning: /nearUltraviolet_Whm2 metering m: 103 mW of UV-A to a lumen of light "
                    "at place rack from 2026-03-18T09:00 to 2026-03-18T17:00 is more than any; a "
                    "blue sky has about 1 mW/lm, window glass and lamps less, all of sunlight "
                    "together about 9 (2026-03-18T09:00). Check both units; near ultraviolet is "
                    "UV-A alone, in Wh/m². Correct what is wrong, or strike it out."});
}

TEST(MeteringBeyondLight, HoldsTwoMeteringsOfOneTimeTogether) {
    const auto findings = [](const char* to, double nearUltraviolet_Whm2, double exposure_lxh) {
        Book book = soundBook();
        book.add(ofUltraviolet("2026-03-18T09:00", to, nearUltraviolet_Whm2));
        book.add(ofLight("2026-03-18T09:00", "2026-03-18T17:00", exposure_lxh));
        book.add(metering("other", "2026-03-18T09:00", "2026-03-18T17:00", "drawer"));
        return found(book, "metering-beyond-light").size();
    };
    EXPECT_EQ(findings("2026-03-18T17:00", 60, 6'800), 1u);   // all of sunlight, 9 mW/lm
    EXPECT_EQ(findings("2026-03-18T17:00", 9.5, 6'800), 0u);  // blue skylight
    EXPECT_EQ(findings("2026-03-18T16:59", 60, 6'800), 0u);   // not of one time
    EXPECT_EQ(findings("2026-03-18T17:00", 0.07, 0), 0u);     // noise of the instrument
    EXPECT_EQ(findings("2026-03-18T17:00", 1, 0), 1u);
}

}  // namespace
}  // namespace rackbook
