#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;
using build::impressionIds;
using build::on;

Book threePlaces() {
    Book book;
    book.place("room", PlaceKind::room).place("wall", PlaceKind::wall);
    book.place("rack", PlaceKind::rack, [](Place& r) { r.within = Ref<Place>{"room"}; });
    book.edition("e").impressions("e", 1, 3);
    return book;
}

TEST(PlacesAtOnce, FindsTwoMovesOfOneDayThatNothingPutsInOrder) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", impressionIds("e", 1, 3));
    book.move("wall", "2026-03-04", impressionIds("e", 1, 2));
    EXPECT_EQ(
        found(book, "places-at-once"),
        Texts{"warning: /at move move2: impressions e:1,2 go to place wall and, by move move1, "
              "to place rack at the same time (2026-03-04). Give the times, or say in from "
              "which came first."});
}

TEST(PlacesAtOnce, LeavesMovesThatAreInOrderOrWithinOnePlaceOrBadlyKnown) {
    Book chain = threePlaces();
    chain.move("rack", "2026-03-04", {"e-1"});
    chain.move("wall", "2026-03-04", {"e-1"}, [](Move& r) { r.from = Ref<Place>{"rack"}; });
    EXPECT_EQ(found(chain, "places-at-once"), Texts{});
    Book times = threePlaces();
    times.move("rack", "2026-03-04T09:00", {"e-1"}).move("wall", "2026-03-04T10:00", {"e-1"});
    EXPECT_EQ(found(times, "places-at-once"), Texts{});
    Book within = threePlaces();
    within.move("rack", "2026-03-04", {"e-1"}).move("room", "2026-03-04", {"e-1"});
    EXPECT_EQ(found(within, "places-at-once"), Texts{});
    Book years = threePlaces();
    years.move("rack", "1998", {"e-1"}).move("wall", "1998", {"e-1"});
    EXPECT_EQ(found(years, "places-at-once"), Texts{});
}

TEST(PlacesAtOnce, FindsAStayThatOutlastsTheNextMove) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", {"e-1"}, [](Move& r) { r.until = on("2026-03-20"); });
    book.move("wall", "2026-03-10", {"e-1"});
    EXPECT_EQ(
        found(book, "places-at-once"),
        Texts{"error: /until move move1: impression e:1 is at place rack until then, but at place "
              "wall from 2026-03-10 by move move2 (2026-03-20). Correct one of the two dates."});
    Book near = threePlaces();
    near.move("rack", "2026-03-04", {"e-1"}, [](Move& r) { r.until = on("2026-03-10"); });
    near.move("wall", "2026-03-10", {"e-1"});
    EXPECT_EQ(found(near, "places-at-once"), Texts{});
}

TEST(WhereaboutsGap, FindsAMoveFromWhereItWasNot) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", impressionIds("e", 1, 3));
    book.place("drawer", PlaceKind::drawer);
    book.move("drawer", "2026-03-10", {"e-1", "e-3"}, [](Move& r) { r.from = Ref<Place>{"wall"}; });
    EXPECT_EQ(
        found(book, "whereabouts-gap"),
        Texts{"warning: /from move move2: impressions e:1,3 were at place rack until then, by "
              "move move1 (wall). Correct from, or record the move in between."});
}

TEST(WhereaboutsGap, LeavesThePlaceAroundAndStaysThatEnded) {
    Book around = threePlaces();
    around.move("rack", "2026-03-04", {"e-1"});
    around.move("wall", "2026-03-10", {"e-1"}, [](Move& r) { r.from = Ref<Place>{"room"}; });
    EXPECT_EQ(found(around, "whereabouts-gap"), Texts{});
    Book sameDay = threePlaces();
    sameDay.move("rack", "2026-03-04", {"e-1"}).place("drawer", PlaceKind::drawer);
    sameDay.move("drawer", "2026-03-10", {"e-1"}, [](Move& r) { r.from = Ref<Place>{"wall"}; });
    sameDay.move("wall", "2026-03-10", {"e-1"}, [](Move& r) { r.from = Ref<Place>{"rack"}; });
    EXPECT_EQ(found(sameDay, "whereabouts-gap"), Texts{});
    Book ended = threePlaces();
    ended.move("rack", "2026-03-04", {"e-1"}, [](Move& r) { r.until = on("2026-03-06"); });
    ended.place("drawer", PlaceKind::drawer);
    ended.move("drawer", "2026-03-10", {"e-1"}, [](Move& r) { r.from = Ref<Place>{"wall"}; });
    EXPECT_EQ(found(ended, "whereabouts-gap"), Texts{});
}

TEST(WhereaboutsGap, FindsWhatLeftForNowhere) {
    Book book = threePlaces();
    book.move("rack", "2026-03-04", impressionIds("e", 1, 2),
              [](Move& r) { r.until = on("2026-03-06"); });
    EXPECT_EQ(
        found(book, "whereabouts-gap"),
        Texts{"warning: /until move move1: impressions e:1,2 left here, and nothing says where "
              "they went (2026-03-06). Record the move that followed."});
    Book ahead = threePlaces();
    ahead.move("rack", "2026-03-04", {"e-1"}, [](Move& r) { r.until = on("2026-07-06"); });
    EXPECT_EQ(found(ahead, "whereabouts-gap"), Texts{});
}

TEST(WhereaboutsGap, NotesPrintedSheetsWithoutAnyPlace) {
    Book book = threePlaces();
    book.layer("e", 1).pull("e-layer1", "2026-03-04", impressionIds("e", 1, 2));
    EXPECT_EQ(found(book, "whereabouts-gap"),
              Texts{"note: edition e: no place is recorded for impressions 1,2. Record a move that "
                    "says where they are."});
    book.move("rack", "2026-03-04", {"e-1", "e-2"});
    EXPECT_EQ(found(book, "whereabouts-gap"), Texts{});
}

TEST(PlaceRing, IsFoundOnce) {
    Book book;
    book.place("a", PlaceKind::room, [](Place& r) { r.within = Ref<Place>{"c"}; });
    book.place("b", PlaceKind::room, [](Place& r) { r.within = Ref<Place>{"c"}; });
    book.place("c", PlaceKind::room, [](Place& r) { r.within = Ref<Place>{"b"}; });
    book.place("d", PlaceKind::room, [](Place& r) { r.within = Ref<Place>{"d"}; });
    EXPECT_EQ(found(book, "place-ring"),
              (Texts{"error: /within place c: places c and b lie within one another in a ring (b). "
                     "Name the place that is really around it.",
                     "error: /within place d: place d lies within itself (d). Name the place that "
                     "is really around it."}));
    EXPECT_EQ(found(threePlaces(), "place-ring"), Texts{});
}

Book withBuyer() {
    Book book;
    book.party("buyer").party("gallery").edition("e");
    return book;
}

TEST(HolderWithoutTransfer, IsFound) {
    Book book = withBuyer();
    book.impressions("e", 1, 2, [](Impression& r) { r.holder = Ref<Party>{"buyer"}; });
    EXPECT_EQ(found(book, "holder-without-transfer"),
              Texts{"warning: edition e: impressions 1,2 have the holder buyer, but no transfer to "
                    "that holder is recorded. Record the transfer, as well as its date is known."});
}

TEST(HolderWithoutTransfer, LeavesTransferredOnesAndTheMakersOwn) {
    Book book = withBuyer();
    book.impressions("e", 1, 1, [](Impression& r) { r.holder = Ref<Party>{"buyer"}; });
    book.impressions("e", 2, 2, [](Impression& r) { r.holder = Ref<Party>{"maker"}; });
    book.transfer(TransferKind::sale, "maker", "buyer", "2026-03-10", {"e-1"});
    EXPECT_EQ(found(book, "holder-without-transfer"), Texts{});
    EXPECT_EQ(found(book, "transfer-without-holder"), Texts{});
}

TEST(TransferWithoutHolder, FindsEachWayToDiffer) {
    Book book = withBuyer();
    const auto heldBy = [](const char* party) {
        return [party](Impression& r) { r.holder = Ref<Party>{party}; };
    };
    book.impressions("e", 1, 1).impressions("e", 2, 3, heldBy("gallery"));
    book.transfer(TransferKind::sale, "maker", "buyer", "2026-03-10", {"e-1", "e-2"});
    book.transfer(TransferKind::consignment, "maker", "gallery", "2026-03-10", {"e-3"});
    EXPECT_EQ(
        found(book, "transfer-without-holder"),
        (Texts{
            "warning: /receiver transfer transfer1: impression e:1 names no holder, though "
            "transferred here (buyer). Record the holder, or the transfer that followed.",
            "warning: /receiver transfer transfer1: impression e:2 names another holder than this "
            "transfer (buyer). Record the holder, or the transfer that followed."}));
    book.transfer(TransferKind::giveBack, "gallery", "maker", "2026-04-10", {"e-2", "e-3"});
    EXPECT_EQ(
        found(book, "transfer-without-holder"),
        (Texts{"warning: /receiver transfer transfer1: impression e:1 names no holder, though "
               "transferred here (buyer). Record the holder, or the transfer that followed.",
               "warning: /giver transfer transfer3: impressions e:2,3 were given back here, "
               "but still with the giver as holder (gallery). Take the holder off, or record "
               "the transfer that followed."}));
}

TEST(TransferWithoutHolder, LeavesWhatIsGivenBackOrNotInOrder) {
    Book book = withBuyer();
    book.impressions("e", 1, 2);
    book.transfer(TransferKind::loan, "maker", "gallery", "2026-03-10", {"e-1"});
    book.transfer(TransferKind::giveBack, "gallery", "maker", "2026-04-10", {"e-1"});
    book.transfer(TransferKind::giveBack, "gallery", "maker", "2026", {"e-2"});
    book.transfer(TransferKind::loan, "maker", "gallery", "2026", {"e-2"});
    EXPECT_EQ(found(book, "transfer-without-holder"), Texts{});
}

TEST(PlacesAtOnce, NamesTheSheetsOfEachEdition) {
    Book book = soundBook();
    book.edition("f").impressions("f", 7, 8);
    book.move("rack", "2026-05-01", {"e-1", "f-7", "f-8"},
              [](Move& r) { r.until = on("2026-05-02"); });
    EXPECT_EQ(found(book, "whereabouts-gap"),
              Texts{"warning: /until move move3: impressions e:1 and f:7,8 left here, and nothing "
                    "says where they went (2026-05-02). Record the move that followed."});
}

TEST(DestroyedDiffers, FindsWhatWasTakenAwayToBeDestroyedAndIsStillKept) {
    Book book = soundBook();
    book.move("rack", "2026-05-01", impressionIds("e", 1, 2),
              [](Move& r) { r.why = MoveWhy::destroy; });
    EXPECT_EQ(found(book, "destroyed-differs"),
              Texts{"error: /why move move3: impressions e:1,2 were moved to be destroyed, but not "
                    "recorded so (2026-05-01). Record the fate destroyed, or correct the move."});
    EXPECT_EQ(found(soundBook(), "destroyed-differs"), Texts{});
}

}  // namespace
}  // namespace rackbook
