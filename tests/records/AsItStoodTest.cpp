#include "records/AsItStood.h"

#include <gtest/gtest.h>

#include "support/Build.h"

namespace rackbook {
namespace {

using build::on;

const CivilMinute day = on("2026-03-20").latest();

template <class R>
R stood(R record) {
    standAt(record, day);
    return record;
}

TEST(AsItStood, KnowsWhatCameAfter) {
    EXPECT_FALSE(isAfter(std::nullopt, day));
    EXPECT_FALSE(isAfter(on("2026-03-20T23:59"), day));
    EXPECT_TRUE(isAfter(on("2026-03-21"), day));
    // It may have been in January.
    EXPECT_FALSE(isAfter(on("2026"), day));
}

TEST(AsItStood, KnowsWhatThatLastsCameWhen) {
    Lot lot;
    EXPECT_TRUE(isThere(lot, day));
    lot.boughtOn = on("2026-03-21");
    EXPECT_FALSE(isThere(lot, day));
    Mix mix;
    mix.madeOn = on("2026-03-21");
    EXPECT_FALSE(isThere(mix, day));
    Attachment picture;
    picture.takenOn = on("2026-03-21");
    EXPECT_FALSE(isThere(picture, day));
    EXPECT_TRUE(isThere(picture, on("2026-03-21").latest()));
    // The journal says when things happened, and a tin is no happening.
    EXPECT_EQ(happenedAt(lot), std::nullopt);
}

TEST(AsItStood, OpensAndFinishesNothingBeforeItsDay) {
    Lot lot;
    lot.openedOn = on("2026-03-20");
    lot.finishedOn = on("2026-03-21");
    EXPECT_EQ(stood(lot).openedOn, on("2026-03-20"));
    EXPECT_EQ(stood(lot).finishedOn, std::nullopt);
    Mix mix;
    mix.finishedOn = on("2026-04");
    EXPECT_EQ(stood(mix).finishedOn, std::nullopt);
    Balance balance;
    balance.retiredOn = on("2026-04");
    EXPECT_EQ(stood(balance).retiredOn, std::nullopt);
    Move move;
    move.until = on("2026-04");
    EXPECT_EQ(stood(move).until, std::nullopt);
}

TEST(AsItStood, WeighsWhatARunLeftAtItsEnd) {
    Pull pull;
    pull.end = on("2026-03-20T18:00");
    pull.inkAfter_g = 3;
    EXPECT_EQ(stood(pull).inkAfter_g, 3);
    pull.end = on("2026-03-21T18:00");
    EXPECT_EQ(stood(pull).end, std::nullopt);
    EXPECT_EQ(stood(pull).inkAfter_g, std::nullopt);
}

TEST(AsItStood, HasTheLightOfTheDay) {
    Place place;
    place.light.resize(3);
    place.light[1].from = on("2026-03-21");
    place.light[2].from = on("2026-03-19");
    const Place then = stood(place);
    ASSERT_EQ(then.light.size(), 2u);
    EXPECT_EQ(then.light[1].from, on("2026-03-19"));
}

TEST(AsItStood, HasCutNoStateAfterOneThatWasCutLater) {
    Block block;
    block.states = {
        {1, "cut", on("2026-03-01")}, {2, "cut", on("2026-03-21")}, {3, "cut", std::nullopt}};
    block.fate = MatrixFate::cutAway;
    block.fateOn = on("2026-03-25");
    const Block then = stood(block);
    ASSERT_EQ(then.states.size(), 1u);
    EXPECT_EQ(then.fate, MatrixFate::kept);
    EXPECT_EQ(then.fateOn, std::nullopt);
    block.fateOn = on("2026-03-20");
    EXPECT_EQ(stood(block).fate, MatrixFate::cutAway);
}

TEST(AsItStood, SignsAndDestroysNothingBeforeItsDay) {
    Impression impression;
    impression.designation = "1/3";
    impression.designationKind = DesignationKind::numbered;
    impression.signedOn = on("2026-03-21");
    impression.fate = ImpressionFate::destroyed;
    impression.fateOn = on("2026-03-22");
    const Impression then = stood(impression);
    EXPECT_EQ(then.designation, std::nullopt);
    EXPECT_EQ(then.designationKind, std::nullopt);
    EXPECT_EQ(then.fate, ImpressionFate::kept);
}

TEST(RecordsThen, HoldWhatHadBeenUsedWhateverItsOwnDaySays) {
    build::Book book;
    const auto bought = [](Lot& r) { r.boughtOn = on("2026-04-01"); };
    book.lot("used", LotKind::ink, bought).lot("unused", LotKind::ink, bought);
    book.mix("jar", MixPurpose::stock, [](Mix& r) { r.madeOn = on("2026-04-01"); });
    book.addLot("jar", "used", 10, "2026-03-01T09:00");
    book.addLot("jar", "unused", 10, "2026-04-02T09:00");
    const RecordSet then = recordsAsOf(book.records, day);
    EXPECT_NE(then.find<Lot>("used"), nullptr);
    EXPECT_EQ(then.find<Lot>("unused"), nullptr);
    EXPECT_NE(then.find<Mix>("jar"), nullptr);
    EXPECT_EQ(then.of<Weighing>().size(), 1u);
}

TEST(RecordsThen, PrintALayerFromNoMixThatWasMadeLater) {
    build::Book book;
    book.mix("later", MixPurpose::stock, [](Mix& r) { r.madeOn = on("2026-04-01"); });
    book.edition("E").layer("E", 1, [](Layer& r) { r.mix = Ref<Mix>{"later"}; });
    EXPECT_EQ(recordsAsOf(book.records, day).of<Layer>().front().mix, std::nullopt);
    EXPECT_EQ(recordsAsOf(book.records, on("2026-04-01").latest()).of<Layer>().front().mix->id,
              "later");
}

// Made by "maker", printed by "printer".
build::Book handedOver() {
    build::Book book;
    book.party("printer").party("gallery").party("buyer");
    book.edition("E", [](Edition& r) { r.printer = Ref<Party>{"printer"}; });
    book.impressions("E", 1, 3, [](Impression& r) { r.holder = Ref<Party>{"buyer"}; });
    book.transfer(TransferKind::consignment, "maker", "gallery", "2026-03-10", {"E-1"});
    book.transfer(TransferKind::sale, "gallery", "buyer", "2026-04-01", {"E-1"});
    book.transfer(TransferKind::sale, "maker", "buyer", "2026-04-01", {"E-2"});
    book.transfer(TransferKind::sale, "printer", "buyer", "2026-04-01", {"E-3"});
    return book;
}

std::optional<Ref<Party>> holderOf(const char* impression, const char* on) {
    const build::Book book = handedOver();
    return recordsAsOf(book.records, build::on(on).latest()).find<Impression>(impression)->holder;
}

TEST(RecordsThen, LeaveASheetWithWhoeverHadIt) {
    EXPECT_EQ(holderOf("E-1", "2026-03-20"), Ref<Party>{"gallery"});
    EXPECT_EQ(holderOf("E-1", "2026-04-01"), Ref<Party>{"buyer"});
    EXPECT_EQ(holderOf("E-1", "2026-03-09"), std::nullopt);
    EXPECT_EQ(holderOf("E-2", "2026-03-20"), std::nullopt);
    EXPECT_EQ(holderOf("E-3", "2026-03-20"), std::nullopt);
}

}  // namespace
}  // namespace rackbook
