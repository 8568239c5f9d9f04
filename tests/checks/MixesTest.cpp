#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;
using build::on;

TEST(MixOverdrawn, NamesTheEventAndHowMuchIsShort) {
    Book book = soundBook();
    book.weighing("stock", WeighingAct::discard, 21.5, "2026-03-20");
    book.weighing("stock", WeighingAct::discard, 2, "2026-03-21");
    book.pull("e-layer1", "2026-03-22", {}, [](Pull& r) {
        r.portion = Ref<Mix>{"portion2"};
        r.inkBefore_g = 60;
        r.inkAfter_g = 10;
    });
    EXPECT_EQ(
        found(book, "mix-overdrawn"),
        (Texts{"error: /mass_g weighing weighing6: mix stock is short by 1.5 g here (21.5 g). "
               "Record the weighing that is missing, or correct this one.",
               "error: /mass_g weighing weighing7: mix stock is short by 3.5 g here (2 g). "
               "Record the weighing that is missing, or correct this one.",
               "error: /inkBefore_g pull pull3: mix portion2 is short by 10 g here (50 g). "
               "Record the weighing that is missing, or correct this one."}));
}

TEST(MixOverdrawn, LeavesWhatSticksToTheKnife) {
    Book book = soundBook();
    book.weighing("stock", WeighingAct::discard, 20.4, "2026-03-20");
    EXPECT_EQ(found(book, "mix-overdrawn"), Texts{});
}

TEST(MixOverdrawn, ManySmallShortagesAddUp) {
    Book book = soundBook();
    book.weighing("stock", WeighingAct::discard, 20.4, "2026-03-20");
    book.weighing("stock", WeighingAct::discard, 0.4, "2026-03-21");
    EXPECT_EQ(found(book, "mix-overdrawn"),
              Texts{"error: /mass_g weighing weighing7: mix stock is short by 0.8 g here (0.4 g). "
                    "Record the weighing that is missing, or correct this one."});
}

TEST(MixOverdrawn, LeavesWhatBadlyKnownDatesAndMassesLeaveOpen) {
    Book dates = soundBook();
    dates.weighing("stock", WeighingAct::discard, 60, "2026-03-20");
    dates.addLot("stock", "blue", 50, "2026-03");
    EXPECT_EQ(found(dates, "mix-overdrawn"), Texts{});
    Book order;
    order.lot("base", LotKind::base).mix("jar", MixPurpose::stock).mix("slab", MixPurpose::letDown);
    order.addLot("jar", "base", 10, "2026-03-04");
    order.addMix("slab", "jar", 30, "2026-03/2026-04");
    order.addLot("jar", "base", 25, "2026-03-20/2026-05");
    EXPECT_EQ(found(order, "mix-overdrawn"), Texts{});
    Book sequence;
    sequence.lot("base", LotKind::base).mix("jar", MixPurpose::stock);
    sequence.mix("slab", MixPurpose::letDown);
    sequence.addMix("slab", "jar", 30, "2026-03-04");
    sequence.addLot("jar", "base", 35, "2026-03-04", [](Weighing& r) { r.sequence = 1; });
    EXPECT_EQ(found(sequence, "mix-overdrawn"), Texts{});
    Book mass = soundBook();
    mass.addLot("stock", "blue", 0, "2026-03-02", [](Weighing& r) { r.mass_g.reset(); });
    mass.weighing("stock", WeighingAct::discard, 500, "2026-03-20");
    EXPECT_EQ(found(mass, "mix-overdrawn"), Texts{});
    Book unrecorded;
    unrecorded.mix("jar", MixPurpose::stock);
    unrecorded.weighing("jar", WeighingAct::withdraw, 500, "1998");
    EXPECT_EQ(found(unrecorded, "mix-overdrawn"), Texts{});
}

TEST(MixRing, IsFound) {
    Book book = soundBook();
    EXPECT_EQ(found(book, "mix-ring"), Texts{});
    book.addMix("stock", "portion2", 5, "2026-03-20");
    const std::string remedy =
        " Where leftovers went back into a jar, begin a new mix for what is in it then; else "
        "correct the source of a weighing.";
    EXPECT_EQ(
        found(book, "mix-ring"),
        Texts{"warning: mix stock: mixes stock and portion2 take from one another in a ring." +
              remedy});
    Book self;
    self.mix("jar", MixPurpose::stock).addMix("jar", "jar", 5, "2026-03-20");
    EXPECT_EQ(found(self, "mix-ring"),
              Texts{"warning: mix jar: mix jar takes from itself." + remedy});
}

TEST(DrierInDrierFree, IsFoundDirectlyAndThroughAParent) {
    Book book = soundBook();
    book.addLot("stock", "cobalt", 1, "2026-03-20");
    book.mix("letDown", MixPurpose::letDown, [](Mix& r) { r.drierFree = true; });
    book.addMix("letDown", "portion1", 5, "2026-03-10");
    const std::string remedy = " Put drier into portions only, or take drierFree off the mix.";
    EXPECT_EQ(
        found(book, "drier-in-drier-free"),
        (Texts{"error: /fromMix weighing weighing7: mix portion1 holds drier, but mix letDown "
               "is declared free of drier (portion1)." +
                   remedy,
               "error: /lot weighing weighing6: lot cobalt is a drier, but mix stock is "
               "declared free of drier (cobalt)." +
                   remedy}));
}

TEST(DrierInDrierFree, LeavesWhatWasTakenBeforeTheDrierWentIn) {
    Book book = soundBook();
    book.mix("letDown", MixPurpose::letDown, [](Mix& r) { r.drierFree = true; });
    book.addMix("letDown", "portion2", 5, "2026-03-10");
    book.addLot("portion2", "cobalt", 0.2, "2026-03-11");
    EXPECT_EQ(found(book, "drier-in-drier-free"), Texts{});
}

TEST(DrierShare, IsANoteAtTheFirstPullWithTooMuch) {
    Book book = soundBook();
    book.addLot("portion2", "cobalt", 2, "2026-03-06");
    book.pull("e-layer2", "2026-03-06", {}, [](Pull& r) { r.portion = Ref<Mix>{"portion2"}; });
    EXPECT_EQ(
        found(book, "drier-share"),
        Texts{"note: mix portion2: 4.8 % of it was drier at pull pull2, more than 3.5 %. Look "
              "over its weighings (our reading: handbooks advise about 1 to 3 per cent, from "
              "memory)."});
    Book near = soundBook();
    near.addLot("portion2", "cobalt", 1.4, "2026-03-06");
    EXPECT_EQ(found(near, "drier-share"), Texts{});
}

TEST(DrierShare, LooksAtPortionsThatWereNotPulled) {
    Book book = soundBook();
    book.mix("spare", MixPurpose::portion).addMix("spare", "stock", 10, "2026-03-20");
    book.addLot("spare", "cobalt", 10, "2026-03-20");
    EXPECT_EQ(
        found(book, "drier-share"),
        Texts{"note: mix spare: 50 % of it was drier, more than 3.5 %. Look over its "
              "weighings (our reading: handbooks advise about 1 to 3 per cent, from memory)."});
}

TEST(LotOverdrawn, FindsMoreThanTheTinHeld) {
    Book book;
    book.lot("blue", LotKind::ink, [](Lot& r) { r.netMass_g = 60; });
    book.lot("red", LotKind::ink).mix("jar", MixPurpose::stock);
    book.addLot("jar", "blue", 40, "2026-03-01").addLot("jar", "red", 400, "2026-03-01");
    book.addLot("jar", "blue", 20.4, "2026-03-02");
    EXPECT_EQ(found(book, "lot-overdrawn"), Texts{});
    book.addLot("jar", "blue", 0.2, "2026-03-03");
    EXPECT_EQ(found(book, "lot-overdrawn"),
              Texts{"error: /netMass_g lot blue: 60.6 g were weighed out of it, and it held 60 g. "
                    "Correct a weighing, or the net mass; another tin is another lot."});
}

TEST(LotDates, FindsAStockTakeOfALotThatWasNotThere) {
    Book book;
    book.lot("blue", LotKind::ink, [](Lot& r) {
        r.boughtOn = on("2026-01-10");
        r.finishedOn = on("2026-04-01");
    });
    const auto take = [&](const std::string& id, const std::string& at, double mass_g) {
        StockTake record;
        record.id = id;
        record.lot = {"blue"};
        record.at = on(at);
        record.mass_g = mass_g;
        book.records.add(record);
    };
    take("early", "2026-01-09", 20);
    take("late", "2026-04-02", 20);
    take("empty", "2026-04-02", 0);
    take("sound", "2026-02", 20);
    const std::string remedy = " Correct one of the two dates.";
    EXPECT_EQ(found(book, "lot-dates"),
              (Texts{"error: /at stockTake early: lot blue was only bought later, on 2026-01-10 "
                     "(2026-01-09)." +
                         remedy,
                     "error: /at stockTake late: lot blue was finished before, on 2026-04-01 "
                     "(2026-04-02)." +
                         remedy}));
}

TEST(LotDates, FindsUseOutsideTheLifeOfALot) {
    Book book;
    book.lot("blue", LotKind::ink, [](Lot& r) {
        r.boughtOn = on("2026-01-10");
        r.openedOn = on("2026-02-01");
        r.finishedOn = on("2026-04-01");
    });
    book.lot("red", LotKind::ink, [](Lot& r) { r.boughtOn = on("2026-01-10"); });
    book.mix("jar", MixPurpose::stock);
    book.addLot("jar", "blue", 5, "2026-01-05").addLot("jar", "blue", 5, "2026-04-02");
    book.addLot("jar", "red", 5, "2026-01-09").addLot("jar", "blue", 5, "2026-04-01");
    book.addLot("jar", "red", 5, "2026-01");
    const std::string remedy = " Correct one of the two dates.";
    EXPECT_EQ(found(book, "lot-dates"),
              (Texts{"error: /at weighing weighing1: lot blue was only opened later, on 2026-02-01 "
                     "(2026-01-05)." +
                         remedy,
                     "error: /at weighing weighing2: lot blue was finished before, on 2026-04-01 "
                     "(2026-04-02)." +
                         remedy,
                     "error: /at weighing weighing3: lot red was only bought later, on 2026-01-10 "
                     "(2026-01-09)." +
                         remedy}));
}

TEST(MixDates, FindsUseOutsideTheLifeOfAMix) {
    Book book;
    book.edition("e").layer("e", 1).lot("base", LotKind::base);
    book.mix("jar", MixPurpose::stock, [](Mix& r) {
        r.madeOn = on("2026-02-01");
        r.finishedOn = on("2026-04-01");
    });
    book.mix("slab", MixPurpose::portion);
    book.addLot("jar", "base", 5, "2026-01-05").addMix("slab", "jar", 1, "2026-04-02");
    book.addLot("jar", "base", 5, "2026-02-01");
    book.pull("e-layer1", "2026-04-03", {}, [](Pull& r) { r.portion = Ref<Mix>{"jar"}; });
    const std::string remedy = " Correct one of the two dates.";
    EXPECT_EQ(found(book, "mix-dates"),
              (Texts{"error: /at weighing weighing1: mix jar was only made later, on 2026-02-01 "
                     "(2026-01-05)." +
                         remedy,
                     "error: /at weighing weighing2: mix jar was finished before, on 2026-04-01 "
                     "(2026-04-02)." +
                         remedy,
                     "error: /start pull pull1: mix jar was finished before, on 2026-04-01 "
                     "(2026-04-03)." +
                         remedy}));
}

}  // namespace
}  // namespace rackbook
