#include "sheets/BenchFacts.h"

#include <gtest/gtest.h>

#include "EditionBook.h"

namespace rackbook {
namespace {

BenchFacts factsOf(const build::Book& book, const std::string& layer, const char* day) {
    return benchFactsOf(book.records, *book.records.find<Layer>(layer), test::onDay(day));
}

std::vector<int> numbersOf(const BenchFacts& facts) {
    std::vector<int> numbers;
    for (const BenchImpression& impression : facts.impressions)
        numbers.push_back(impression.workingNumber);
    return numbers;
}

using Numbers = std::vector<int>;

// Layer 1 was printed on 2 January on all ten, layer 2 on 9 January; 9 was spoiled on that day and
// 3 destroyed on 10 March; layer 3 in January or thereabouts on 1 to 8.
TEST(BenchFacts, ListsWhatTheLayerWouldPrint) {
    const build::Book book = test::editionBook();
    EXPECT_EQ(numbersOf(factsOf(book, "HB-layer1", "2026-01-01")),
              (Numbers{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}));
    EXPECT_EQ(numbersOf(factsOf(book, "HB-layer2", "2026-01-05")),
              (Numbers{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}));
    EXPECT_EQ(factsOf(book, "HB-layer2", "2026-01-05").layerBefore, 1);
    const BenchFacts third = factsOf(book, "HB-layer3", "2026-03-20");
    EXPECT_EQ(numbersOf(third), (Numbers{10}));
    EXPECT_EQ(third.printed, (Numbers{1, 2, 4, 5, 6, 7, 8}));
    EXPECT_TRUE(third.missed.empty());
}

TEST(BenchFacts, LeavesOutWhatTheLayerBeforeDidNotPrint) {
    build::Book book;
    book.edition("E").impressions("E", 1, 5);
    for (int layer = 1; layer <= 4; ++layer)
        book.layer("E", layer);
    book.pull("E-layer1", "2026-01-02", build::impressionIds("E", 1, 4));
    book.pull("E-layer2", "2026-01-09", build::impressionIds("E", 2, 3));
    book.pull("E-layer2", "2026-01-10", {"E-4"});
    // Layer 3 was passed over: what layer 2 printed goes on.
    const BenchFacts facts = factsOf(book, "E-layer4", "2026-02-01");
    EXPECT_EQ(numbersOf(facts), (Numbers{2, 3, 4}));
    EXPECT_EQ(facts.missed, (Numbers{1, 5}));
    EXPECT_EQ(facts.layerBefore, 2);
    EXPECT_EQ(facts.layers, 4u);
    // Before its second run.
    EXPECT_EQ(numbersOf(factsOf(book, "E-layer4", "2026-01-09")), (Numbers{2, 3}));
}

TEST(BenchFacts, ListsAllThatAreKeptWhereNothingWasPrintedYet) {
    build::Book book;
    book.edition("E").impressions("E", 1, 3).layer("E", 2);
    book.edition("F").impressions("F", 7, 8);
    const BenchFacts facts = factsOf(book, "E-layer2", "2026-02-01");
    EXPECT_EQ(numbersOf(facts), (Numbers{1, 2, 3}));
    EXPECT_EQ(facts.layerBefore, 0);
    EXPECT_TRUE(facts.missed.empty());
}

TEST(BenchFacts, GivesDesignationsOfThatDay) {
    build::Book book;
    book.edition("E").layer("E", 1);
    book.signedImpression("E", 1, "TP", DesignationKind::trialProof, "2026-01-20");
    book.impressions("E", 2, 2);
    EXPECT_EQ(factsOf(book, "E-layer1", "2026-01-19").impressions[0].designation, "");
    EXPECT_EQ(factsOf(book, "E-layer1", "2026-01-20").impressions[0].designation, "TP");
    EXPECT_EQ(factsOf(book, "E-layer1", "2026-01-20").impressions[1].designation, "");
}

TEST(BenchFacts, SaysWhatIsPrinted) {
    build::Book book = test::editionBook();
    book.layer("HB", 4, [](Layer& r) {
        r.block = Ref<Block>{"HB-block"};
        r.blockState = 9;
        r.mix = Ref<Mix>{"guess"};
    });
    const BenchFacts first = factsOf(book, "HB-layer1", "2026-01-01");
    EXPECT_EQ(first.code, "HB");
    EXPECT_EQ(first.title, "Harbour");
    EXPECT_EQ(first.block, "HB-block");
    EXPECT_EQ(first.stateWords, "cut");
    EXPECT_EQ(first.mix, "");
    EXPECT_EQ(first.studio, "Studio at the Old Weir");
    const BenchFacts last = factsOf(book, "HB-layer4", "2026-03-20");
    EXPECT_EQ(last.stateWords, "");  // no such state is recorded
    EXPECT_EQ(last.mix, "Portion b");
}

}  // namespace
}  // namespace rackbook
