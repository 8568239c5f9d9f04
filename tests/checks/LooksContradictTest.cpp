#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;
using build::on;

// An extender-rich layer on 6 March, at the rack since then, found true on 8 April.
Book inLight(LightKind light = LightKind::daylight) {
    Book book;
    book.place("rack", PlaceKind::rack, light);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    book.lot("base", LotKind::base).lot("blue", LotKind::ink);
    book.mix("thin", MixPurpose::portion).mix("strong", MixPurpose::portion);
    book.addLot("thin", "base", 90, "2026-03-01").addLot("thin", "blue", 10, "2026-03-01");
    book.addLot("strong", "blue", 40, "2026-03-01");
    book.edition("e").layer("e", 1).layer("e", 2).impressions("e", 1, 3);
    book.pull("e-layer1", "2026-03-06", build::impressionIds("e", 1, 3),
              [](Pull& r) { r.portion = Ref<Mix>{"thin"}; });
    book.move("rack", "2026-03-06", build::impressionIds("e", 1, 3));
    book.look("2026-04-08", build::impressionIds("e", 1, 3), Touch::dry, LookColour::trueColour);
    return book;
}

Book& turned(Book& book, const char* at) {
    return book.look(at, {"e-1", "e-2"}, Touch::dry, LookColour::turned);
}

const std::string contradiction =
    "warning: /colour look look2: impressions e:1,2 were found turned, but look look1 of "
    "2026-04-08 "
    "had found the colour true since the last extender-rich layer, and nothing but light is "
    "recorded in between (2026-04-12). Look again, and correct the look that is wrong or strike it "
    "out.";

TEST(LooksContradict, FindsColourThatTurnedInLight) {
    Book book = inLight();
    turned(book, "2026-04-12");
    EXPECT_EQ(found(book, "looks-contradict"), Texts{contradiction});
}

TEST(LooksContradict, TellsEachTurnOnce) {
    Book book = inLight();
    book.look("2026-04-10", {"e-1", "e-2"}, Touch::dry, LookColour::returning);
    turned(book, "2026-04-12");
    turned(book, "2026-04-13");
    EXPECT_EQ(found(book, "looks-contradict").size(), 1u);
}

TEST(LooksContradict, LeavesWhatLayInTheDarkInBetween) {
    Book drawer = inLight();
    drawer.move("drawer", "2026-04-09", {"e-1", "e-2"}).move("rack", "2026-04-10", {"e-1", "e-2"});
    turned(drawer, "2026-04-12");
    EXPECT_EQ(found(drawer, "looks-contradict"), Texts{});
    Book covered = inLight();
    covered.move("rack", "2026-04-09", {"e-1", "e-2"}, [](Move& r) { r.interleaved = true; });
    turned(covered, "2026-04-12");
    EXPECT_EQ(found(covered, "looks-contradict"), Texts{});
    Book shuttered = inLight();
    shuttered.place("cellar", PlaceKind::rack, [](Place& r) {
        r.light.resize(2);
        r.light[0].lightKind = LightKind::daylight;
        r.light[1].from = on("2026-04-11");
        r.light[1].lightKind = LightKind::artificial;
    });
    shuttered.move("cellar", "2026-04-08", {"e-1", "e-2"});
    turned(shuttered, "2026-04-12");
    EXPECT_EQ(found(shuttered, "looks-contradict"), Texts{});
}

// Into the drawer only after the later look, or out of it before the earlier one: light in between.
TEST(LooksContradict, FindsItBesideDarkThatDoesNotCount) {
    Book book = inLight();
    book.move("drawer", "2026-04-02", {"e-1", "e-2"}).move("rack", "2026-04-07", {"e-1", "e-2"});
    turned(book, "2026-04-12");
    book.move("drawer", "2026-04-13", {"e-1", "e-2"});
    EXPECT_EQ(found(book, "looks-contradict"), Texts{contradiction});
}

TEST(LooksContradict, LeavesLightAndWhereaboutsThatAreNotKnown) {
    Book unlit = inLight();
    unlit.place("shop", PlaceKind::wall).move("shop", "2026-04-09", {"e-1", "e-2"});
    turned(unlit, "2026-04-12");
    EXPECT_EQ(found(unlit, "looks-contradict"), Texts{});
    Book gone = inLight();
    gone.move("rack", "2026-04-09", {"e-1", "e-2"}, [](Move& r) { r.until = on("2026-04-10"); });
    turned(gone, "2026-04-12");
    EXPECT_EQ(found(gone, "looks-contradict"), Texts{});
    Book roughly = inLight();
    roughly.move("drawer", "2026-04~", {"e-1", "e-2"});
    turned(roughly, "2026-04-12");
    EXPECT_EQ(found(roughly, "looks-contradict"), Texts{});
}

// It left the rack before the earlier look and came back after it.
TEST(LooksContradict, LeavesAGapAroundTheEarlierLook) {
    Book book = inLight();
    book.move("rack", "2026-04-01", {"e-1", "e-2"}, [](Move& r) { r.until = on("2026-04-05"); });
    book.move("rack", "2026-04-10", {"e-1", "e-2"});
    turned(book, "2026-04-12");
    EXPECT_EQ(found(book, "looks-contradict"), Texts{});
}

TEST(LooksContradict, LeavesInkOfWhichTheShareOfBaseIsNotKnown) {
    Book book = inLight();
    book.pull("e-layer2", "2026-03-10", {"e-1", "e-2"});
    turned(book, "2026-04-12");
    EXPECT_EQ(found(book, "looks-contradict"), Texts{});
}

TEST(LooksContradict, LeavesFreshInkThatLookedTrueBeforeItTurned) {
    Book book = inLight();
    book.look("2026-03-08", {"e-3"}, Touch::wet, LookColour::trueColour);
    book.look("2026-03-12", {"e-3"}, Touch::tacky, LookColour::turned);
    EXPECT_EQ(found(book, "looks-contradict"), Texts{});
}

TEST(LooksContradict, LeavesAnExtenderRichLayerInBetweenButNoOther) {
    Book again = inLight();
    again.pull("e-layer2", "2026-04-09", {"e-1", "e-2"},
               [](Pull& r) { r.portion = Ref<Mix>{"thin"}; });
    turned(again, "2026-04-12");
    EXPECT_EQ(found(again, "looks-contradict"), Texts{});
    Book strong = inLight();
    strong.pull("e-layer2", "2026-04-09", {"e-1", "e-2"},
                [](Pull& r) { r.portion = Ref<Mix>{"strong"}; });
    turned(strong, "2026-04-12");
    EXPECT_EQ(found(strong, "looks-contradict"), Texts{contradiction});
}

TEST(LooksContradict, LeavesPrintsWithoutAnExtenderRichLayer) {
    Book book;
    book.place("rack", PlaceKind::rack, LightKind::daylight);
    book.lot("blue", LotKind::ink).mix("strong", MixPurpose::portion);
    book.addLot("strong", "blue", 40, "2026-03-01");
    book.edition("e").layer("e", 1).impressions("e", 1, 3);
    book.pull("e-layer1", "2026-03-06", {"e-1", "e-2"},
              [](Pull& r) { r.portion = Ref<Mix>{"strong"}; });
    book.move("rack", "2026-03-06", {"e-1", "e-2"});
    book.look("2026-04-08", {"e-1", "e-2"}, Touch::dry, LookColour::trueColour);
    turned(book, "2026-04-12");
    EXPECT_EQ(found(book, "looks-contradict"), Texts{});
}

TEST(LooksContradict, FindsOppositesOfOneDay) {
    Book book = inLight();
    turned(book, "2026-04-08T15:00");
    EXPECT_EQ(found(book, "looks-contradict"),
              Texts{"warning: /colour look look2: impressions e:1,2 were found turned on this day, "
                    "and true by look look1 of 2026-04-08 (2026-04-08T15:00). Look again, and "
                    "correct the look that is wrong or strike it out."});
    Book other = inLight(LightKind::dark);
    turned(other, "2026-03-20T09:00");
    other.look("2026-03-20T11:00", {"e-2"}, Touch::dry, LookColour::trueColour);
    EXPECT_EQ(found(other, "looks-contradict"),
              Texts{"warning: /colour look look3: impression e:2 was found true on this day, and "
                    "turned by look look2 of 2026-03-20T09:00 (2026-03-20T11:00). Look again, and "
                    "correct the look that is wrong or strike it out."});
}

TEST(LooksContradict, LeavesOneDayWithAPullOrAtOtherPrintsOrReturning) {
    Book pulled = inLight();
    turned(pulled, "2026-04-08T15:00");
    pulled.pull("e-layer2", "2026-04-08T12:00", {"e-1", "e-2"});
    EXPECT_EQ(found(pulled, "looks-contradict"), Texts{});
    Book others = inLight(LightKind::dark);
    others.look("2026-03-20", {"e-1"}, Touch::dry, LookColour::trueColour);
    others.look("2026-03-20", {"e-2"}, Touch::dry, LookColour::turned);
    others.look("2026-03-21", {"e-1"}, Touch::dry, LookColour::trueColour);
    others.look("2026-03-21", {"e-1"}, Touch::dry, LookColour::returning);
    EXPECT_EQ(found(others, "looks-contradict"), Texts{});
}

// Dry on 8 April by the first look.
TEST(LooksContradict, FindsInkThatIsWetAgainWithoutAPull) {
    Book book = inLight();
    book.look("2026-04-11", {"e-1", "e-3"}, Touch::wet, LookColour::trueColour);
    book.look("2026-04-12", {"e-1", "e-2"}, Touch::tacky, LookColour::trueColour);
    EXPECT_EQ(
        found(book, "looks-contradict"),
        (Texts{"warning: /touch look look2: impressions e:1,3 were found wet, but look look1 "
               "of 2026-04-08 had found the ink dry, and no pull is recorded in between "
               "(2026-04-11). Look again, and correct the look that is wrong or strike it "
               "out.",
               "warning: /touch look look3: impression e:2 was found tacky, but look look1 of "
               "2026-04-08 had found the ink dry, and no pull is recorded in between "
               "(2026-04-12). Look again, and correct the look that is wrong or strike it "
               "out."}));
}

TEST(LooksContradict, LeavesWetInkAfterAPullOfThatPrintAlone) {
    Book book = inLight();
    book.pull("e-layer2", "2026-04-08", {"e-1"}).pull("e-layer2", "2026-04-12", {"e-2"});
    book.look("2026-04-11", {"e-1", "e-2"}, Touch::wet, LookColour::trueColour);
    EXPECT_EQ(found(book, "looks-contradict"),
              Texts{"warning: /touch look look2: impression e:2 was found wet, but look look1 of "
                    "2026-04-08 had found the ink dry, and no pull is recorded in between "
                    "(2026-04-11). Look again, and correct the look that is wrong or strike it "
                    "out."});
    Book roughly = inLight();
    roughly.pull("e-layer2", "2026-04~", build::impressionIds("e", 1, 3));
    roughly.look("2026-04-11", {"e-1"}, Touch::wet, LookColour::trueColour);
    EXPECT_EQ(found(roughly, "looks-contradict"), Texts{});
}

TEST(LooksContradict, LeavesInkThatDriesAndLooksOfOneDay) {
    Book book = inLight();
    book.look("2026-03-07", {"e-1"}, Touch::wet, LookColour::trueColour);
    book.look("2026-03-09", {"e-1"}, Touch::tacky, LookColour::trueColour);
    book.look("2026-04-08", {"e-1"}, Touch::tacky, LookColour::trueColour);
    book.look("2026-04-09", {"e-1"}, Touch::dry, LookColour::trueColour);
    EXPECT_EQ(found(book, "looks-contradict"), Texts{});
}

}  // namespace
}  // namespace rackbook
