#include "calc/HeapLife.h"

#include <gtest/gtest.h>

#include "base/Edtf.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

TimeSpan on(const std::string& text) {
    const EdtfDate date = EdtfDate::parse(text);
    return {date.earliest(), date.latest()};
}

enum Lots { ink, cobalt };
enum Mixes { stock, portion };

// 16 hours with drier, 336 without.
class HeapLifeTest : public testing::Test {
protected:
    HeapLifeTest() {
        history.lots = {LotKind::ink, LotKind::drier};
        history.mixCount = 2;
        mixes.resize(2);
    }

    HistoryWeighing& weigh(int mix, WeighingAct act, int lot, int fromMix, double mass_g,
                           const std::string& at) {
        HistoryWeighing row;
        row.mix = mix;
        row.act = act;
        row.lot = lot;
        row.fromMix = fromMix;
        row.at = on(at);
        row.mass_g = mass_g;
        history.weighings.push_back(row);
        return history.weighings.back();
    }
    void add(int mix, int lot, double mass_g, const std::string& at) {
        weigh(mix, WeighingAct::add, lot, -1, mass_g, at);
    }
    void discard(int mix, double mass_g, const std::string& at) {
        weigh(mix, WeighingAct::discard, -1, -1, mass_g, at);
    }

    HeapLife life(int mix, const std::string& asOf) const {
        return heapLives({history, mixes, on(asOf).latest, lives, temperature_C, 0.5})
            .at(static_cast<std::size_t>(mix));
    }
    HeapVerdict verdict(int mix, const std::string& asOf) const { return life(mix, asOf).verdict; }

    History history;
    std::vector<HeapFacts> mixes;
    HeapLives lives = {16, 336};
    double temperature_C = notKnown;
};

TEST_F(HeapLifeTest, WithDrierItLivesFromWhenTheFirstDrierWentIn) {
    add(portion, ink, 20, "2026-03-01T09:00");
    add(portion, cobalt, 0.3, "2026-03-04T09:00");
    add(portion, cobalt, 0.1, "2026-03-04T15:00");
    const HeapLife found = life(portion, "2026-03-04T21:00");
    EXPECT_EQ(found.verdict, HeapVerdict::lives);
    EXPECT_TRUE(found.holdsDrier);
    EXPECT_DOUBLE_EQ(found.age_h.best, 12);
    EXPECT_EQ(found.ends->earliest, on("2026-03-05T01:00").earliest);
    EXPECT_EQ(verdict(portion, "2026-03-04T21:01"), HeapVerdict::nearItsEnd);
    EXPECT_EQ(verdict(portion, "2026-03-05T01:00"), HeapVerdict::nearItsEnd);
    EXPECT_EQ(verdict(portion, "2026-03-05T01:01"), HeapVerdict::past);
}

TEST_F(HeapLifeTest, WithoutDrierItLivesFromWhenItWasMade) {
    add(stock, ink, 20, "2026-03-01T09:00");
    EXPECT_EQ(verdict(stock, "2026-03-11T09:00"), HeapVerdict::lives);
    EXPECT_EQ(verdict(stock, "2026-03-12T09:00"), HeapVerdict::nearItsEnd);
    EXPECT_EQ(verdict(stock, "2026-03-15T09:01"), HeapVerdict::past);
}

TEST_F(HeapLifeTest, DrierOutOfAnotherHeapHasBeenAtWorkThere) {
    add(stock, cobalt, 1, "2026-03-04T08:00");
    add(stock, ink, 20, "2026-03-04T08:01");
    weigh(portion, WeighingAct::add, -1, stock, 10, "2026-03-04T20:00");
    const HeapLife found = life(portion, "2026-03-04T21:00");
    EXPECT_DOUBLE_EQ(found.age_h.best, 13);
    EXPECT_EQ(found.verdict, HeapVerdict::nearItsEnd);
}

// The speed of a reaction doubles with 10 K: van 't Hoff's rule, from memory.
TEST_F(HeapLifeTest, WarmthShortensAndColdLengthensIt) {
    EXPECT_DOUBLE_EQ(lifeAt(16, 20), 16);
    EXPECT_DOUBLE_EQ(lifeAt(16, 30), 8);
    EXPECT_DOUBLE_EQ(lifeAt(16, 10), 32);
    EXPECT_DOUBLE_EQ(lifeAt(16, notKnown), 16);
    add(portion, cobalt, 1, "2026-03-04T08:00");
    temperature_C = 30;
    EXPECT_EQ(verdict(portion, "2026-03-04T16:30"), HeapVerdict::past);
    temperature_C = 20;
    EXPECT_EQ(verdict(portion, "2026-03-04T16:30"), HeapVerdict::lives);
}

TEST_F(HeapLifeTest, AHeapThatWasEmptiedStartsAnew) {
    add(portion, ink, 20, "2026-03-01T09:00");
    add(portion, cobalt, 0.3, "2026-03-01T09:05");
    discard(portion, 20, "2026-03-01T18:00");
    EXPECT_EQ(verdict(portion, "2026-03-01T19:00"), HeapVerdict::notThere);
    add(portion, ink, 10, "2026-03-04T09:00");
    const HeapLife found = life(portion, "2026-03-04T10:00");
    EXPECT_EQ(found.verdict, HeapVerdict::lives);
    EXPECT_FALSE(found.holdsDrier);
    EXPECT_DOUBLE_EQ(found.age_h.best, 1);
}

// Less than the tolerance, but nothing was taken out yet.
TEST_F(HeapLifeTest, ALittleDrierPutOutFirstIsNotForgotten) {
    add(portion, cobalt, 0.3, "2026-03-04T09:00");
    add(portion, ink, 20, "2026-03-04T09:05");
    EXPECT_TRUE(life(portion, "2026-03-04T10:00").holdsDrier);
}

TEST_F(HeapLifeTest, WhatIsUsedUpFinishedOrNotYetMadeIsNotThere) {
    add(stock, ink, 20, "2026-03-04T09:00");
    EXPECT_EQ(verdict(stock, "2026-03-03T09:00"), HeapVerdict::notThere);
    EXPECT_EQ(verdict(stock, "2026-03-05T09:00"), HeapVerdict::lives);
    mixes[stock].finished = on("2026-03-06");
    EXPECT_EQ(verdict(stock, "2026-03-05T09:00"), HeapVerdict::lives);
    // Some time that day.
    EXPECT_EQ(verdict(stock, "2026-03-06T09:00"), HeapVerdict::lives);
    EXPECT_EQ(verdict(stock, "2026-03-07T00:00"), HeapVerdict::notThere);
    mixes[stock].finished.reset();
    history.pulls.push_back({-1, stock, on("2026-03-07T09:00"), 19.6});
    EXPECT_EQ(verdict(stock, "2026-03-08T09:00"), HeapVerdict::notThere);
}

TEST_F(HeapLifeTest, WithoutWeighingsTheDayItWasMadeCounts) {
    EXPECT_EQ(verdict(stock, "2026-03-08T09:00"), HeapVerdict::cannotTell);
    mixes[stock].made = on("2026-03-04");
    const HeapLife found = life(stock, "2026-03-08T09:00");
    EXPECT_EQ(found.verdict, HeapVerdict::lives);
    EXPECT_FALSE(found.age_h.isKnown());
    EXPECT_DOUBLE_EQ(found.age_h.high, 4 * 24 + 9);
    mixes[stock].made = on("2026-03-09");
    EXPECT_EQ(verdict(stock, "2026-03-08T09:00"), HeapVerdict::notThere);
}

TEST_F(HeapLifeTest, ABadlyKnownDayMayNotTell) {
    add(portion, cobalt, 1, "2026-03-04");
    EXPECT_EQ(verdict(portion, "2026-03-05T10:00"), HeapVerdict::cannotTell);
    EXPECT_EQ(verdict(portion, "2026-03-05T20:00"), HeapVerdict::past);
}

TEST_F(HeapLifeTest, UnknownMassesAreNoReasonToForgetAHeap) {
    add(portion, ink, 20, "2026-03-04T09:00");
    weigh(portion, WeighingAct::discard, -1, -1, notKnown, "2026-03-04T10:00");
    EXPECT_EQ(verdict(portion, "2026-03-04T11:00"), HeapVerdict::lives);
}

TEST_F(HeapLifeTest, RefusesWhatCannotBe) {
    const auto refusal = [&] { return messageOf([&] { life(stock, "2026-03-04"); }); };
    for (const double hours : {0.0, -1.0, notKnown}) {
        lives = {hours, 336};
        EXPECT_EQ(refusal(), "life of a heap: it is not above 0. Give it in hours at 20 °C.");
        lives = {16, hours};
        EXPECT_EQ(refusal(), "life of a heap: it is not above 0. Give it in hours at 20 °C.");
    }
    lives = {16, 336};
    for (const double degrees : {-51.0, 101.0}) {
        temperature_C = degrees;
        EXPECT_EQ(refusal(), "temperature: it is outside -50 … 100 °C. Give it in °C.");
    }
}

}  // namespace
}  // namespace rackbook
