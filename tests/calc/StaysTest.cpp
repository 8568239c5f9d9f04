#include "calc/Stays.h"

#include <gtest/gtest.h>

#include "calc/HistoryOf.h"
#include "calc/PlaceLight.h"
#include "support/Build.h"

namespace rackbook {
namespace {

using build::Book;
using build::on;

std::vector<Stay> staysIn(const Book& book, const std::string& asOf) {
    std::vector<Stay> stays;
    staysOf(historyOf(book.records), 0, on(asOf).latest(), stays);
    return stays;
}

Book threePlaces() {
    Book book;
    book.place("rack", PlaceKind::rack, LightKind::daylight);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    book.edition("e").impressions("e", 1, 1);
    return book;
}

TEST(Stays, FollowOneAnotherInOrderOfTimeNotOfRecording) {
    Book book = threePlaces();
    book.move("drawer", "2026-03-10", {"e-1"}).move("rack", "2026-03-04", {"e-1"});
    const std::vector<Stay> stays = staysIn(book, "2026-04-01");
    ASSERT_EQ(stays.size(), 2U);
    EXPECT_EQ(stays[0].place, 0);
    EXPECT_EQ(stays[0].to.earliest, on("2026-03-10").earliest());
    EXPECT_TRUE(stays[0].followed);
    EXPECT_EQ(stays[1].to.earliest, endOfTime);
    EXPECT_FALSE(stays[1].followed);
}

TEST(Stays, LeaveOutMovesThatAreStillToCome) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", {"e-1"}).move("drawer", "2026-05-10", {"e-1"});
    EXPECT_EQ(staysIn(book, "2026-04-01").size(), 1U);
}

TEST(Stays, EndAtTheEarlierOfUntilAndTheNextMove) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", {"e-1"}, [](Move& r) { r.until = on("2026-03-06"); });
    book.move("drawer", "2026-03-10", {"e-1"}, [](Move& r) { r.until = on("2026-03-20"); });
    book.move("rack", "2026-03-15", {"e-1"});
    const std::vector<Stay> stays = staysIn(book, "2026-04-01");
    EXPECT_EQ(stays[0].to.latest, on("2026-03-06").latest());
    EXPECT_FALSE(stays[0].followed);
    EXPECT_EQ(stays[1].to.latest, on("2026-03-15").latest());
    EXPECT_TRUE(stays[1].followed);
}

TEST(Stays, AnUntilThatIsStillToComeEndsNothing) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", {"e-1"}, [](Move& r) { r.until = on("2026-06-06"); });
    EXPECT_EQ(staysIn(book, "2026-04-01")[0].to.latest, endOfTime);
}

TEST(PlaceLight, ClimbsUntilAPlaceStatesItsLight) {
    Book book = threePlaces();
    book.place("hook", PlaceKind::other, [](Place& r) { r.within = Ref<Place>{"rack"}; });
    const PlaceLight light(historyOf(book.records));
    EXPECT_EQ(light.at(2, 0), LightState::lit);
}

TEST(PlaceLight, ARingOfPlacesEndsTheClimb) {
    Book book;
    book.place("a", PlaceKind::room, [](Place& r) { r.within = Ref<Place>{"b"}; });
    book.place("b", PlaceKind::room, [](Place& r) { r.within = Ref<Place>{"a"}; });
    const PlaceLight light(historyOf(book.records));
    EXPECT_EQ(light.at(0, 0), LightState::unstated);
    EXPECT_FALSE(light.isOutOfHands(0));
}

TEST(PlaceLight, IsNotKnownWhileABadlyDatedChangeMayHaveHappened) {
    Book book;
    book.place("wall", PlaceKind::wall, [](Place& r) {
        r.light.resize(2);
        r.light[0].lightKind = LightKind::dark;
        r.light[1].lightKind = LightKind::metered;
        r.light[1].from = on("2026-03");
    });
    const PlaceLight light(historyOf(book.records));
    EXPECT_EQ(light.at(0, on("2026-02-28").latest()), LightState::dark);
    EXPECT_EQ(light.at(0, on("2026-03-15").latest()), LightState::unstated);
    EXPECT_EQ(light.at(0, on("2026-04-01").latest()), LightState::lit);
    EXPECT_FALSE(light.isLitThroughout(0, on("2026-02-28").latest(), on("2026-04-02").latest()));
    EXPECT_TRUE(light.isLitThroughout(0, on("2026-04-01").latest(), on("2026-04-02").latest()));
}

TEST(PlaceLight, BeforeItsFirstEntryNothingIsKnown) {
    Book book;
    book.place("wall", PlaceKind::wall, [](Place& r) {
        r.light.resize(1);
        r.light[0].lightKind = LightKind::daylight;
        r.light[0].from = on("2026-03-10T00:00");
    });
    const PlaceLight light(historyOf(book.records));
    EXPECT_EQ(light.at(0, on("2026-03-09").latest()), LightState::unstated);
    EXPECT_EQ(light.at(0, on("2026-03-10").latest()), LightState::lit);
}

TEST(PlaceLight, WhatLiesWithinAHoldersPlaceIsOutOfHands) {
    Book book;
    book.place("house", PlaceKind::room, [](Place& r) { r.holder = Ref<Party>{"maker"}; });
    book.place("wall", PlaceKind::wall, [](Place& r) { r.within = Ref<Place>{"house"}; });
    book.place("rack", PlaceKind::rack);
    const PlaceLight light(historyOf(book.records));
    EXPECT_TRUE(light.isOutOfHands(1));
    EXPECT_FALSE(light.isOutOfHands(2));
}

}  // namespace
}  // namespace rackbook
