// What the sheet of a drawer is made from, in a book made of records.
#include "commands/DrawerFactsOf.h"

#include <gtest/gtest.h>

#include "base/Error.h"
#include "support/Build.h"

namespace rackbook {
namespace {

// Ink of base and drier, pulled on the 1st. Prints 1 and 2 go into the drawer on the 3rd, still
// tacky; 3 hangs in light for a month, is found true and dry twice and follows, interleaved.
build::Book drawerBook() {
    build::Book book;
    book.add(rackbook::Book{}, [](rackbook::Book& r) {
        r.id = "book";
        r.studio = "Studio at the Old Weir";
        r.timeZone = "Europe/Copenhagen";
    });
    book.place("chest", PlaceKind::other, LightKind::dark);
    for (const char* drawer : {"drawer-1", "drawer-2"})
        book.place(drawer, PlaceKind::drawer, [](Place& r) {
            r.within = Ref<Place>{"chest"};
            r.capacity = 20;
        });
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.lot("clear", LotKind::base);
    book.lot("cobalt", LotKind::drier);
    book.mix("portion", MixPurpose::portion);
    book.addLot("portion", "clear", 98, "2026-01-31T08:00");
    book.addLot("portion", "cobalt", 2, "2026-01-31T08:01");
    book.edition("HB").layer("HB", 1).impressions("HB", 1, 3);
    book.pull("HB-layer1", "2026-02-01T10:00", build::impressionIds("HB", 1, 3),
              [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
    book.look("2026-02-02", {"HB-1", "HB-2"}, Touch::tacky, LookColour::turned);
    book.move("drawer-1", "2026-02-03T10:00", {"HB-1", "HB-2"});
    book.move("window", "2026-02-01T12:00", {"HB-3"});
    book.look("2026-02-25", {"HB-3"}, Touch::dry, LookColour::trueColour);
    book.look("2026-03-01", {"HB-3"}, Touch::dry, LookColour::trueColour);
    book.move("drawer-1", "2026-03-05T10:00", {"HB-3"}, [](Move& r) { r.interleaved = true; });
    return book;
}

std::vector<DrawerWithFacts> drawersAt(const std::string& place, const char* day) {
    const build::Book book = drawerBook();
    return drawersWithFactsOf(book.records, *book.records.find<Place>(place),
                              build::on(day).latest());
}

TEST(DrawerFacts, SayWhatLiesThereAndSinceWhen) {
    const std::vector<DrawerWithFacts> drawers = drawersAt("drawer-1", "2026-03-20");
    ASSERT_EQ(drawers.size(), 1u);
    EXPECT_EQ(drawers[0].impressions, (std::vector<std::string>{"HB-1", "HB-2", "HB-3"}));
    const DrawerFacts& facts = drawers[0].facts;
    EXPECT_EQ(facts.name, "drawer-1");
    EXPECT_EQ(facts.studio, "Studio at the Old Weir");
    EXPECT_EQ(facts.capacity, 20);
    ASSERT_EQ(facts.prints.size(), 3u);
    const DrawerPrint& first = facts.prints[0];
    EXPECT_EQ(first.verdict, Verdict::bringOut);
    EXPECT_EQ(first.touchThen, Touch::tacky);
    EXPECT_FALSE(first.isInterleaved);
    EXPECT_EQ(formatMinute(first.since.earliest), "2026-02-03T10:00");
    // What is to be brought out waits for no day.
    EXPECT_FALSE(first.airing_day);
    EXPECT_TRUE(first.isAiringDue);
    const DrawerPrint& third = facts.prints[2];
    EXPECT_EQ(third.verdict, Verdict::ready);
    EXPECT_TRUE(third.isInterleaved);
    EXPECT_FALSE(third.mayNeedLight);
    EXPECT_FALSE(third.airing_day);
}

TEST(DrawerFacts, SayWhatCameBesideSoftPrints) {
    const DrawerFacts facts = drawersAt("drawer-1", "2026-03-20").front().facts;
    ASSERT_EQ(facts.soft.size(), 1u);
    const DrawerSoft& soft = facts.soft[0];
    ASSERT_EQ(soft.prints.size(), 2u);
    EXPECT_EQ(soft.touch, Touch::tacky);
    EXPECT_TRUE(soft.besideThen.empty());
    ASSERT_EQ(soft.comeSince.size(), 1u);
    EXPECT_EQ(soft.comeSince[0].workingNumber, 3);
    EXPECT_TRUE(soft.comeSince[0].isInterleaved);
}

TEST(DrawerFacts, LeaveOutWhatCameLater) {
    const DrawerFacts facts = drawersAt("drawer-1", "2026-02-20").front().facts;
    EXPECT_EQ(facts.prints.size(), 2u);
    EXPECT_TRUE(facts.soft.at(0).comeSince.empty());
    EXPECT_EQ(facts.prints[0].verdict, Verdict::bringOut);
    EXPECT_TRUE(facts.prints[0].isAiringDue);
}

// Ink of which nothing is recorded may have been rich in base.
TEST(DrawerFacts, SayWhenToAirWhatTheRecordDoesNotDecide) {
    build::Book book = drawerBook();
    book.layer("HB", 2).impressions("HB", 4, 4);
    book.pull("HB-layer2", "2026-02-01T10:00", {"HB-4"});
    book.move("drawer-1", "2026-02-03T10:00", {"HB-4"});
    const auto printOn = [&](const char* day) {
        return drawersWithFactsOf(book.records, *book.records.find<Place>("drawer-1"),
                                  build::on(day).latest())
            .front()
            .facts.prints.back();
    };
    const DrawerPrint before = printOn("2026-03-04");
    ASSERT_EQ(before.verdict, Verdict::unknown);
    // 30 days (the default of airing_days) from 3 February 2026: 5 March.
    ASSERT_TRUE(before.airing_day);
    EXPECT_EQ(formatDay(*before.airing_day * minutesPerDay), "2026-03-05");
    EXPECT_FALSE(before.isAiringDue);
    EXPECT_TRUE(printOn("2026-03-05").isAiringDue);
}

TEST(DrawerFacts, GoThroughTheDrawersWithinAPlace) {
    const std::vector<DrawerWithFacts> drawers = drawersAt("chest", "2026-03-20");
    ASSERT_EQ(drawers.size(), 2u);
    EXPECT_EQ(drawers[0].place, "drawer-1");  // what is to be aired first
    EXPECT_TRUE(drawers[1].facts.prints.empty());
}

// What is to be brought out goes before what has lain in the dark for longer.
TEST(DrawerFacts, BeginWithTheDrawerThatHasSomethingToBringOut) {
    build::Book book = drawerBook();
    book.layer("HB", 2).impressions("HB", 4, 4);
    book.pull("HB-layer2", "2026-01-05T10:00", {"HB-4"});
    book.move("drawer-2", "2026-01-06T10:00", {"HB-4"});
    const std::vector<DrawerWithFacts> drawers = drawersWithFactsOf(
        book.records, *book.records.find<Place>("chest"), build::on("2026-02-20").latest());
    ASSERT_EQ(drawers.size(), 2u);
    EXPECT_EQ(drawers[0].place, "drawer-1");
    ASSERT_EQ(drawers[1].facts.prints.size(), 1u);
    EXPECT_EQ(drawers[1].facts.prints[0].verdict, Verdict::unknown);
    EXPECT_TRUE(drawers[1].facts.prints[0].isAiringDue);
}

TEST(DrawerFacts, RefuseAPlaceWithoutADrawer) {
    try {
        drawersAt("window", "2026-03-20");
        FAIL() << "nothing was thrown";
    } catch (const UsageError& error) {
        EXPECT_NE(std::string(error.what()).find("at window there is no drawer"),
                  std::string::npos);
    }
}

}  // namespace
}  // namespace rackbook
