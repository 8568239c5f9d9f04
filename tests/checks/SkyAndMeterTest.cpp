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

}  // namespace
}  // namespace rackbook
