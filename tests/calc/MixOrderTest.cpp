#include "calc/MixOrder.h"

#include <gtest/gtest.h>

#include "calc/HistoryOf.h"
#include "support/Build.h"

namespace rackbook {
namespace {

using build::Book;

// "w0 p0 w1": rows of weighings and pulls in their order.
std::string orderOf(const Book& book) {
    const History history = historyOf(book.records);
    std::string text;
    for (const LedgerEvent event :
         mixOrder(history.weighings, history.pulls, history.mixCount).events)
        text += (text.empty() ? "" : " ") + std::string(event.isPull ? "p" : "w") +
                std::to_string(event.row);
    return text;
}

Book twoMixes() {
    Book book;
    book.lot("base", LotKind::base).mix("stock", MixPurpose::stock);
    book.mix("portion", MixPurpose::portion).edition("e").layer("e", 1);
    return book;
}

void pullFrom(Book& book, const std::string& at) {
    book.pull("e-layer1", at, {}, [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
}

TEST(MixOrder, GoesByTimeThenSequence) {
    Book book = twoMixes();
    book.addLot("stock", "base", 1, "2026-03-02T10:00", [](Weighing& r) { r.sequence = 2; });
    book.addLot("stock", "base", 1, "2026-03-02T10:00", [](Weighing& r) { r.sequence = 1; });
    book.addLot("stock", "base", 1, "2026-03-02T09:00", [](Weighing& r) { r.sequence = 9; });
    EXPECT_EQ(orderOf(book), "w2 w1 w0");
}

TEST(MixOrder, PutsAdditionsBeforeWhatOnlyTakes) {
    Book book = twoMixes();
    book.weighing("stock", WeighingAct::discard, 1, "2026-03-02T10:00");
    book.addLot("stock", "base", 1, "2026-03-02T10:00");
    EXPECT_EQ(orderOf(book), "w1 w0");
}

TEST(MixOrder, PutsAdditionsIntoShallowerMixesFirst) {
    Book book = twoMixes();
    book.addMix("portion", "stock", 1, "2026-03-02");
    book.addLot("stock", "base", 1, "2026-03-02");
    EXPECT_EQ(orderOf(book), "w1 w0");
}

TEST(MixOrder, PutsAPullAfterTheWeighingsOfItsTime) {
    Book book = twoMixes();
    pullFrom(book, "2026-03-02");
    book.addLot("portion", "base", 1, "2026-03-02", [](Weighing& r) { r.sequence = 7; });
    EXPECT_EQ(orderOf(book), "w0 p0");
}

TEST(MixOrder, PutsAPullKnownToTheDayAfterThatDaysAdditionsToItsPortion) {
    Book book = twoMixes();
    pullFrom(book, "2026-03-02");
    book.addLot("portion", "base", 1, "2026-03-02T09:30");
    book.addLot("portion", "base", 1, "2026-03-03T09:30");
    EXPECT_EQ(orderOf(book), "w0 p0 w1");
}

TEST(MixOrder, PutsAnAdditionKnownToTheDayAfterThatDaysAdditionsToItsParent) {
    Book book = twoMixes();
    book.addMix("portion", "stock", 1, "2026-03-02");
    book.addLot("stock", "base", 1, "2026-03-02T09:30");
    EXPECT_EQ(orderOf(book), "w1 w0");
}

TEST(MixOrder, KeepsAnExactPullBeforeALaterAddition) {
    Book book = twoMixes();
    pullFrom(book, "2026-03-02T09:00");
    book.addLot("portion", "base", 1, "2026-03-02T09:30");
    EXPECT_EQ(orderOf(book), "p0 w0");
}

TEST(MixOrder, CountsDepthAlongTheLongestWay) {
    Book book = twoMixes();
    book.mix("letDown", MixPurpose::letDown);
    book.addLot("stock", "base", 1, "2026-03-02");
    book.addMix("letDown", "stock", 1, "2026-03-02");
    book.addMix("portion", "letDown", 1, "2026-03-02");
    book.addMix("portion", "stock", 1, "2026-03-02");
    const History history = historyOf(book.records);
    const MixOrder order = mixOrder(history.weighings, history.pulls, history.mixCount);
    EXPECT_EQ(order.depth, (std::vector<int>{0, 2, 1}));
    EXPECT_TRUE(order.cycles.empty());
}

TEST(MixOrder, FindsAMixThatTakesFromItself) {
    Book book = twoMixes();
    book.addMix("stock", "stock", 1, "2026-03-02");
    const History history = historyOf(book.records);
    const MixOrder order = mixOrder(history.weighings, history.pulls, history.mixCount);
    ASSERT_EQ(order.cycles.size(), 1U);
    EXPECT_EQ(order.cycles[0], std::vector<int>{0});
}

TEST(MixOrder, WorksThroughALongChainWithoutRecursion) {
    std::vector<HistoryWeighing> weighings(200000);
    for (std::size_t i = 0; i < weighings.size(); ++i) {
        weighings[i].mix = static_cast<int>(i);
        weighings[i].fromMix = i + 1 < weighings.size() ? static_cast<int>(i) + 1 : -1;
        weighings[i].lot = i + 1 < weighings.size() ? -1 : 0;
    }
    const MixOrder order = mixOrder(weighings, {}, weighings.size());
    EXPECT_EQ(order.depth[0], 199999);
    EXPECT_EQ(order.events.front().row, 199999U);
}

}  // namespace
}  // namespace rackbook
