#include "calc/MixLedger.h"

#include <gtest/gtest.h>

#include "calc/HistoryOf.h"
#include "support/Build.h"

namespace rackbook {
namespace {

using build::Book;

constexpr int base = static_cast<int>(LotKind::base);
constexpr int drier = static_cast<int>(LotKind::drier);
constexpr int ink = static_cast<int>(LotKind::ink);

// A stock of 97 parts base to 3 parts ink, and a portion of it with drier.
Book stockAndPortion() {
    Book book;
    book.lot("base", LotKind::base).lot("blue", LotKind::ink).lot("cobalt", LotKind::drier);
    book.mix("stock", MixPurpose::stock).mix("portion", MixPurpose::portion);
    book.edition("e").layer("e", 1);
    book.addLot("stock", "base", 97, "2026-03-01T10:00");
    book.addLot("stock", "blue", 3, "2026-03-01T10:05");
    book.addMix("portion", "stock", 40, "2026-03-04T09:00");
    book.addLot("portion", "cobalt", 0.5, "2026-03-04T09:05");
    return book;
}

void pullFrom(Book& book, const std::string& portion, const std::string& at) {
    book.pull("e-layer1", at, {}, [&](Pull& r) { r.portion = Ref<Mix>{portion}; });
}

TEST(MixLedger, KnowsThePortionAtItsPull) {
    Book book = stockAndPortion();
    pullFrom(book, "portion", "2026-03-04T10:00");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_NEAR(ledger.shareAtPull(0, base).best, 40 * 0.97 / 40.5, 1e-12);
    EXPECT_NEAR(ledger.shareAtPull(0, ink).best, 40 * 0.03 / 40.5, 1e-12);
    EXPECT_NEAR(ledger.shareAtPull(0, drier).best, 0.5 / 40.5, 1e-12);
    const MixContents contents = ledger.atPull(0);
    EXPECT_TRUE(contents.isKnown());
    EXPECT_DOUBLE_EQ(contents.total_g.best, 40.5);
    EXPECT_DOUBLE_EQ(contents.total_g.low, contents.total_g.high);
    EXPECT_EQ(contents.parts.size(), 3U);
    EXPECT_DOUBLE_EQ(ledger.atEnd(0).total_g.best, 60);
}

TEST(MixLedger, LaterAdditionsToTheParentLeaveThePortionAsItWas) {
    Book book = stockAndPortion();
    book.addLot("stock", "blue", 500, "2026-03-04T09:30");
    pullFrom(book, "portion", "2026-03-04T10:00");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_NEAR(ledger.shareAtPull(0, ink).best, 40 * 0.03 / 40.5, 1e-12);
    EXPECT_NEAR(ledger.shareAtEnd(0, ink).best, (60 * 0.03 + 500) / 560, 1e-12);
}

TEST(MixLedger, NamesLotsWhereAskedByLot) {
    Book book = stockAndPortion();
    book.lot("blue2", LotKind::ink).addLot("portion", "blue2", 4.5, "2026-03-04T09:10");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByLot(history));
    EXPECT_NEAR(ledger.shareAtEnd(1, 1).best, 1.2 / 45, 1e-12);
    EXPECT_NEAR(ledger.shareAtEnd(1, 3).best, 0.1, 1e-12);
    EXPECT_DOUBLE_EQ(ledger.shareAtEnd(0, 3).best, 0);
}

TEST(MixLedger, TakingOutLeavesTheSharesAsTheyWere) {
    Book book = stockAndPortion();
    book.weighing("stock", WeighingAct::discard, 20, "2026-03-05");
    book.weighing("stock", WeighingAct::withdraw, 10, "2026-03-05");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_DOUBLE_EQ(ledger.atEnd(0).total_g.best, 30);
    EXPECT_DOUBLE_EQ(ledger.shareAtEnd(0, base).best, 0.97);
}

TEST(MixLedger, APullTakesItsInkOutOfThePortion) {
    Book book = stockAndPortion();
    book.pull("e-layer1", "2026-03-04T10:00", {}, [](Pull& r) {
        r.portion = Ref<Mix>{"portion"};
        r.inkBefore_g = 40.5;
        r.inkAfter_g = 28;
    });
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_DOUBLE_EQ(ledger.atEnd(1).total_g.best, 28);
    EXPECT_DOUBLE_EQ(ledger.atPull(0).total_g.best, 40.5);
}

TEST(MixLedger, AMassNotKnownLeavesBoundsButNoBestValue) {
    Book book = stockAndPortion();
    book.addLot("portion", "blue", 0, "2026-03-04T09:10", [](Weighing& r) { r.mass_g.reset(); });
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    const Estimate share = ledger.shareAtEnd(1, base);
    EXPECT_FALSE(share.isKnown());
    EXPECT_DOUBLE_EQ(share.low, 0);
    EXPECT_NEAR(share.high, 40 * 0.97 / 40.5, 1e-12);
    EXPECT_DOUBLE_EQ(ledger.atEnd(1).total_g.low, 40.5);
    EXPECT_TRUE(std::isinf(ledger.atEnd(1).total_g.high));
    EXPECT_FALSE(ledger.atEnd(1).isKnown());
}

TEST(MixLedger, BoundsOfAMassBoundTheShares) {
    Book book = stockAndPortion();
    book.addLot("portion", "blue", 10, "2026-03-04T09:10", [](Weighing& r) {
        r.massLow_g = 8;
        r.massHigh_g = 12;
    });
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    const Estimate share = ledger.shareAtEnd(1, drier);
    EXPECT_NEAR(share.low, 0.5 / 52.5, 1e-12);
    EXPECT_NEAR(share.best, 0.5 / 50.5, 1e-12);
    EXPECT_NEAR(share.high, 0.5 / 48.5, 1e-12);
}

TEST(MixLedger, AnUnknownMassFromAMixIsNoMoreThanWasInIt) {
    Book book = stockAndPortion();
    book.mix("rest", MixPurpose::letDown);
    book.addMix("rest", "stock", 0, "2026-03-06", [](Weighing& r) { r.mass_g.reset(); });
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_DOUBLE_EQ(ledger.atEnd(2).total_g.high, 60);
    EXPECT_DOUBLE_EQ(ledger.shareAtEnd(2, base).best, 0.97);
    EXPECT_FALSE(ledger.atEnd(0).total_g.isKnown());
}

TEST(MixLedger, AMixWithoutAdditionsHoldsAnythingAtAll) {
    Book book;
    book.lot("base", LotKind::base).mix("jar", MixPurpose::stock);
    book.mix("portion", MixPurpose::portion).edition("e").layer("e", 1);
    book.addMix("portion", "jar", 30, "2020-05-01");
    book.addLot("portion", "base", 10, "2020-05-01", [](Weighing& r) { r.sequence = 1; });
    pullFrom(book, "portion", "2020-05-02");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_TRUE(ledger.overdraws().empty());
    const Estimate share = ledger.shareAtPull(0, base);
    EXPECT_DOUBLE_EQ(share.low, 0.25);
    EXPECT_FALSE(share.isKnown());
    EXPECT_DOUBLE_EQ(share.high, 1);
    EXPECT_DOUBLE_EQ(ledger.atPull(0).unrecorded.best, 0.75);
    EXPECT_FALSE(ledger.atPull(0).isKnown());
}

TEST(MixLedger, APullWithoutAPortionIsNotKnown) {
    Book book = stockAndPortion();
    book.pull("e-layer1", "2026-03-04", {});
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    const Estimate share = ledger.shareAtPull(0, base);
    EXPECT_DOUBLE_EQ(share.low, 0);
    EXPECT_DOUBLE_EQ(share.high, 1);
    EXPECT_FALSE(share.isKnown());
    EXPECT_FALSE(ledger.atPull(0).isKnown());
}

TEST(MixLedger, TellsOfEveryOverdraw) {
    Book book = stockAndPortion();
    book.weighing("stock", WeighingAct::withdraw, 70, "2026-03-05T09:00");
    book.weighing("stock", WeighingAct::withdraw, 5, "2026-03-05T10:00");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    ASSERT_EQ(ledger.overdraws().size(), 2U);
    EXPECT_EQ(ledger.overdraws()[0].mix, 0);
    EXPECT_EQ(ledger.overdraws()[0].event.row, 4U);
    EXPECT_DOUBLE_EQ(ledger.overdraws()[0].best_g, 10);
    EXPECT_DOUBLE_EQ(ledger.overdraws()[0].least_g, 10);
    EXPECT_DOUBLE_EQ(ledger.overdraws()[1].best_g, 5);
}

TEST(MixLedger, AnOverdrawWithinTheBoundsIsOneOnTheBestValuesOnly) {
    Book book = stockAndPortion();
    book.weighing("stock", WeighingAct::withdraw, 70, "2026-03-05", [](Weighing& r) {
        r.massLow_g = 50;
        r.massHigh_g = 80;
    });
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    ASSERT_EQ(ledger.overdraws().size(), 1U);
    EXPECT_DOUBLE_EQ(ledger.overdraws()[0].best_g, 10);
    EXPECT_DOUBLE_EQ(ledger.overdraws()[0].least_g, 0);
}

TEST(MixLedger, TakingEverythingOutIsNoOverdraw) {
    Book book;
    book.lot("base", LotKind::base).mix("jar", MixPurpose::stock);
    for (int i = 0; i < 10; ++i)
        book.addLot("jar", "base", 0.1, "2026-01-01");
    book.weighing("jar", WeighingAct::discard, 1, "2026-01-02");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    EXPECT_TRUE(ledger.overdraws().empty());
    EXPECT_NEAR(ledger.atEnd(0).total_g.best, 0, 1e-12);
}

TEST(MixLedger, ARefilledMixForgetsWhatWasInIt) {
    Book book;
    book.lot("base", LotKind::base).lot("blue", LotKind::ink).mix("jar", MixPurpose::stock);
    book.addLot("jar", "blue", 10, "2026-01-01");
    book.weighing("jar", WeighingAct::discard, 10, "2026-01-02");
    book.addLot("jar", "base", 5, "2026-01-03");
    const History history = historyOf(book.records);
    EXPECT_DOUBLE_EQ(MixLedger(ledgerByKind(history)).shareAtEnd(0, base).best, 1);
}

TEST(MixLedger, ARingOfMixesIsToldAndWorkedThroughInOrderOfTime) {
    Book book;
    book.lot("base", LotKind::base).lot("blue", LotKind::ink);
    book.mix("jar", MixPurpose::stock).mix("slab", MixPurpose::letDown);
    book.addLot("jar", "base", 100, "2026-01-01");
    book.addMix("slab", "jar", 40, "2026-01-02");
    book.addLot("slab", "blue", 10, "2026-01-03");
    book.addMix("jar", "slab", 25, "2026-01-04");
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history));
    ASSERT_EQ(ledger.order().cycles.size(), 1U);
    EXPECT_EQ(ledger.order().cycles[0], (std::vector<int>{0, 1}));
    EXPECT_NEAR(ledger.shareAtEnd(0, ink).best, 5.0 / 85, 1e-12);
    EXPECT_DOUBLE_EQ(ledger.atEnd(0).total_g.best, 85);
}

TEST(MixLedger, LeavesOutWhatHappensLater) {
    Book book = stockAndPortion();
    const History history = historyOf(book.records);
    const MixLedger ledger(ledgerByKind(history, build::on("2026-03-02").latest()));
    EXPECT_DOUBLE_EQ(ledger.atEnd(0).total_g.best, 100);
    EXPECT_DOUBLE_EQ(ledger.atEnd(1).total_g.best, 0);
}

}  // namespace
}  // namespace rackbook
