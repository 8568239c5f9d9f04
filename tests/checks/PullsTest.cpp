#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;
using build::impressionIds;
using build::on;

Book threeLayers() {
    Book book;
    book.edition("e").layer("e", 1).layer("e", 2).layer("e", 3).impressions("e", 1, 6);
    return book;
}

TEST(LayerOrder, FindsALayerThatCameBeforeTheOneUnderIt) {
    Book book = threeLayers();
    book.pull("e-layer1", "2026-03-08", impressionIds("e", 1, 5));
    book.pull("e-layer2", "2026-03-04", impressionIds("e", 1, 3));
    EXPECT_EQ(found(book, "layer-order"),
              Texts{"error: /start pull pull2: layer 2 was pulled on impressions 1-3 before layer "
                    "1 was, in pull pull1 of 2026-03-08 (2026-03-04). Correct one of the dates, or "
                    "the order of the layers."});
}

TEST(LayerOrder, LeavesDatesThatMayAgreeAndSecondPrintings) {
    Book book = threeLayers();
    book.pull("e-layer1", "2026-03", impressionIds("e", 1, 3));
    book.pull("e-layer2", "2026-03-04", impressionIds("e", 1, 3));
    book.pull("e-layer1", "2026-04-02", impressionIds("e", 1, 3));
    book.pull("e-layer3", "2026-03-05", impressionIds("e", 4, 6));
    EXPECT_EQ(found(book, "layer-order"), Texts{});
}

TEST(LayerTwice, FindsSheetsThatGotALayerAgain) {
    Book book = threeLayers();
    book.pull("e-layer1", "2026-03-04", impressionIds("e", 1, 4));
    book.pull("e-layer1", "2026-03-05", impressionIds("e", 4, 6));
    EXPECT_EQ(found(book, "layer-twice"),
              Texts{"warning: /impressions pull pull2: impression 4 has this layer already, from "
                    "pull pull1 (2026-03-05). Leave it if the layer was printed twice; else take "
                    "one pull's out."});
    EXPECT_EQ(found(soundBook(), "layer-twice"), Texts{});
}

TEST(FirstLayerMissing, FindsSheetsThatNeverSawIt) {
    Book book = threeLayers();
    book.pull("e-layer1", "2026-03-04", impressionIds("e", 1, 4));
    book.pull("e-layer2", "2026-03-06", impressionIds("e", 1, 6));
    EXPECT_EQ(found(book, "first-layer-missing"),
              Texts{"warning: edition e: impressions 5,6 have later layers, but never saw layer 1. "
                    "Add what is missing to a pull of layer 1, or correct the other pulls."});
}

TEST(FirstLayerMissing, IsAnErrorInAReduction) {
    Book book;
    book.edition("e").reductionBlock("block", "e", {"2026-03-01", "2026-03-05"});
    for (int ordinal = 1; ordinal <= 2; ++ordinal)
        book.layer("e", ordinal, [&](Layer& r) {
            r.block = Ref<Block>{"block"};
            r.blockState = ordinal;
        });
    book.impressions("e", 1, 3).pull("e-layer1", "2026-03-04", impressionIds("e", 1, 2));
    book.pull("e-layer2", "2026-03-06", impressionIds("e", 1, 3));
    EXPECT_EQ(found(book, "first-layer-missing"),
              (Texts{"error: edition e: impression 3 has later layers, but never saw layer 1. Add "
                     "what is missing to a pull of layer 1, or correct the other pulls.",
                     "error: /declaredNumbered edition e: 3 are declared, but only 2 sheets were "
                     "printed at layer 1 (3). Correct the declaration, or add the sheets that are "
                     "missing from the pull."}));
}

TEST(FirstLayerMissing, LeavesProofsOfSomeLayersAndPullsThatListNoSheets) {
    Book book = threeLayers();
    book.pull("e-layer1", "2026-03-04", impressionIds("e", 1, 6));
    book.signedImpression("e", 7, "SP", DesignationKind::separationProof, "2026-04-01");
    book.pull("e-layer2", "2026-03-06", impressionIds("e", 1, 7));
    EXPECT_EQ(found(book, "first-layer-missing"), Texts{});
    Book unlisted = threeLayers();
    unlisted.pull("e-layer1", "1998", {}).pull("e-layer2", "1998", impressionIds("e", 1, 6));
    EXPECT_EQ(found(unlisted, "first-layer-missing"), Texts{});
    unlisted.pull("e-layer1", "1998", impressionIds("e", 1, 3));
    EXPECT_EQ(found(unlisted, "first-layer-missing"), Texts{});
}

TEST(PulledAfterSigning, IsFound) {
    Book book = soundBook();
    book.layer("e", 3).pull("e-layer3", "2026-04-12", {"e-1", "e-2"});
    EXPECT_EQ(found(book, "pulled-after-signing"),
              Texts{"error: /start pull pull3: impressions 1,2 were signed before this pull "
                    "(2026-04-12). Correct the date of the pull or of the signing."});
    Book sameDay = soundBook();
    sameDay.layer("e", 3).pull("e-layer3", "2026-04-10", {"e-1", "e-2"});
    EXPECT_EQ(found(sameDay, "pulled-after-signing"), Texts{});
}

TEST(PulledAfterFate, IsFound) {
    Book book = threeLayers();
    book.impressions("e", 7, 7, [](Impression& r) {
        r.fate = ImpressionFate::destroyed;
        r.fateOn = on("2026-03-05");
    });
    book.pull("e-layer1", "2026-03-04", {"e-1", "e-7"}, [](Pull& r) { r.spoiled = {{"e-1"}}; });
    EXPECT_EQ(found(book, "pulled-after-fate"), Texts{});
    book.pull("e-layer2", "2026-03-06", {"e-1", "e-2", "e-7"});
    EXPECT_EQ(
        found(book, "pulled-after-fate"),
        Texts{"error: /impressions pull pull2: impressions 1,7 were spoiled or destroyed before "
              "this pull (2026-03-06). Correct the date, or take it out of the later pull."});
}

TEST(PulledAfterLeaving, IsFoundUnlessItMayHaveComeBack) {
    Book book = soundBook();
    book.place("gallery", PlaceKind::gallery).layer("e", 3);
    book.move("gallery", "2026-04-12", {"e-1", "e-2", "e-3"});
    book.move("rack", "2026-04-15", {"e-2"});
    book.move("rack", "2026-04", {"e-3"});
    book.pull("e-layer3", "2026-04-20", {"e-1", "e-2", "e-3"});
    EXPECT_EQ(
        found(book, "pulled-after-leaving"),
        Texts{"error: /impressions pull pull3: impression 1 had left the studio before this pull "
              "(2026-04-20). Correct one of the dates, or record the move that brought it back."});
}

TEST(PulledAfterLeaving, LeavesWhatHadLeftTheGalleryAgain) {
    Book book = soundBook();
    book.place("gallery", PlaceKind::gallery).layer("e", 3);
    book.move("gallery", "2026-04-12", {"e-1"}, [](Move& r) { r.until = on("2026-04-18"); });
    book.pull("e-layer3", "2026-04-20", {"e-1"});
    EXPECT_EQ(found(book, "pulled-after-leaving"), Texts{});
}

TEST(PulledAfterLeaving, PointsOutWhatWasSoldBefore) {
    Book book = soundBook();
    book.party("buyer").layer("e", 3);
    book.transfer(TransferKind::sale, "maker", "buyer", "2026-04-12", {"e-1", "e-2"});
    book.transfer(TransferKind::giveBack, "buyer", "maker", "2026-04-13", {"e-2"});
    book.transfer(TransferKind::consignment, "maker", "buyer", "2026-04-12", {"e-3"});
    book.pull("e-layer3", "2026-04-20", {"e-1", "e-2", "e-3"});
    EXPECT_EQ(
        found(book, "pulled-after-leaving"),
        Texts{"warning: /impressions pull pull3: impression 1 was sold or given away before this "
              "pull (2026-04-20). Leave it if it was sold ahead; else correct one date."});
}

TEST(SpoiledDiffers, FindsBothWays) {
    Book book = threeLayers();
    book.impressions("e", 7, 8, [](Impression& r) { r.fate = ImpressionFate::spoiled; });
    book.pull("e-layer1", "2026-03-04", impressionIds("e", 1, 8), [](Pull& r) {
        r.spoiled = {{"e-2"}, {"e-3"}, {"e-7"}};
    });
    EXPECT_EQ(found(book, "spoiled-differs"),
              (Texts{"error: /spoiled pull pull1: impressions 2,3 are spoiled here, but recorded "
                     "as kept. Record the fate spoiled, or correct the pull.",
                     "note: edition e: impression 8 is recorded as spoiled, but no pull says so. "
                     "Add it to the spoiled sheets of the pull, where it was spoiled in one."}));
}

TEST(SpoiledDiffers, LeavesWhatAgreesOrWasNeverPulled) {
    Book book = threeLayers();
    book.impressions("e", 7, 8, [](Impression& r) { r.fate = ImpressionFate::spoiled; });
    book.pull("e-layer1", "2026-03-04", {"e-1", "e-7"}, [](Pull& r) { r.spoiled = {{"e-7"}}; });
    EXPECT_EQ(found(book, "spoiled-differs"), Texts{});
}

Book reduction() {
    Book book;
    book.edition("e").reductionBlock("block", "e", {"2026-03-01", "2026-03-10", "2026-03-20"});
    for (int ordinal = 1; ordinal <= 2; ++ordinal)
        book.layer("e", ordinal, [&](Layer& r) {
            r.block = Ref<Block>{"block"};
            r.blockState = ordinal;
        });
    return book;
}

TEST(BlockStates, FindsPullsOutsideTheLifeOfAState) {
    Book book = reduction();
    book.pull("e-layer1", "2026-03-12", {});
    book.pull("e-layer1", "2026-03-08", {}, [](Pull& r) { r.end = on("2026-03-11"); });
    book.pull("e-layer2", "2026-03-09", {});
    EXPECT_EQ(
        found(book, "block-states"),
        (Texts{
            "error: /end pull pull2: state 2 of block block was cut, on 2026-03-10, before this "
            "pull of state 1 had ended (2026-03-11). Correct the date of the pull or of the cut.",
            "error: /start pull pull1: state 1 of block block was cut away before this pull, on "
            "2026-03-10 (2026-03-12). Correct the date of the pull or of the cut.",
            "error: /start pull pull3: state 2 of block block was not cut yet at this pull "
            "(2026-03-09). Correct the date of the pull or of the cut."}));
}

TEST(BlockStates, LeavesPullsWithinIt) {
    Book book = reduction();
    book.pull("e-layer1", "2026-03-08", {}, [](Pull& r) { r.end = on("2026-03-10"); });
    book.pull("e-layer2", "2026-03", {});
    EXPECT_EQ(found(book, "block-states"), Texts{});
}

TEST(BlockStates, FindsStatesThatAreNotThereOrOutOfOrder) {
    Book book;
    book.edition("e").reductionBlock("block", "e", {"2026-03-10", "2026-03-01"});
    book.layer("e", 1, [](Layer& r) {
        r.block = Ref<Block>{"block"};
        r.blockState = 4;
    });
    EXPECT_EQ(found(book, "block-states"),
              (Texts{"error: /blockState layer e-layer1: block block has no such state (4). "
                     "Correct the number, or record the state.",
                     "error: /states/1/cutOn block block: it was cut before the state that comes "
                     "before it (2026-03-01). Correct one of the two dates."}));
}

TEST(BlockStates, FindsPullsFromACancelledBlock) {
    Book book;
    book.edition("e").block("key", "e", [](Block& r) {
        r.fate = MatrixFate::cancelled;
        r.fateOn = on("2026-04-01");
        r.states.resize(1);
        r.states[0].cutOn = on("2026-04-05");
    });
    book.layer("e", 1, [](Layer& r) { r.block = Ref<Block>{"key"}; });
    book.impressions("e", 1, 1);
    book.signedImpression("e", 2, "CP", DesignationKind::cancellationProof, "2026-04-03");
    book.pull("e-layer1", "2026-04-02", {"e-1"}).pull("e-layer1", "2026-04-02", {"e-2"});
    EXPECT_EQ(found(book, "block-states"),
              (Texts{"error: /start pull pull1: block key was cancelled before this pull "
                     "(2026-04-02). Correct the date of the pull or of the block's fate.",
                     "error: /fateOn block key: it was cancelled before its last state was cut "
                     "(2026-04-01). Correct one of the two dates."}));
}

Book promise(EditionStatus status, const char* by, MatrixFate fate) {
    Book book;
    book.edition("e", [&](Edition& r) {
        r.status = status;
        r.promisedMatrixFate = MatrixFate::cancelled;
        if (by)
            r.promisedBy = on(by);
    });
    book.block("key", "e", [&](Block& r) { r.fate = fate; });
    return book;
}

TEST(PromisedFate, IsAnErrorOnceTheDayIsPast) {
    EXPECT_EQ(found(promise(EditionStatus::open, "2026-05-01", MatrixFate::kept), "promised-fate"),
              Texts{"error: /fate block key: edition e promises that the matrix is cancelled by "
                    "2026-05-01, and no fate is recorded (kept). Do it, or record that it was done "
                    "and when."});
}

TEST(PromisedFate, IsANoteForAClosedEdition) {
    EXPECT_EQ(found(promise(EditionStatus::closed, nullptr, MatrixFate::kept), "promised-fate"),
              Texts{"note: /fate block key: edition e promises that the matrix is cancelled, and "
                    "no fate is recorded (kept). Do it, or record that it was done and when."});
    Book none;
    none.edition("e", [](Edition& r) {
        r.status = EditionStatus::closed;
        r.promisedMatrixFate = MatrixFate::destroyed;
    });
    EXPECT_EQ(found(none, "promised-fate"),
              Texts{"note: /promisedMatrixFate edition e: the matrix is promised to be destroyed, "
                    "but no block is recorded (destroyed). Record the block and its fate."});
}

TEST(PromisedFate, PointsOutAnotherFateThanPromised) {
    EXPECT_EQ(
        found(promise(EditionStatus::open, nullptr, MatrixFate::effaced), "promised-fate"),
        Texts{"warning: /fate block key: edition e promises that the matrix is cancelled, but it "
              "was effaced (effaced). Correct the record of the fate or of the promise."});
}

TEST(PromisedFate, LeavesWhatIsKeptOrStillToCome) {
    EXPECT_EQ(found(promise(EditionStatus::open, "2026-06", MatrixFate::kept), "promised-fate"),
              Texts{});
    EXPECT_EQ(
        found(promise(EditionStatus::closed, "2026-05-01", MatrixFate::cancelled), "promised-fate"),
        Texts{});
    EXPECT_EQ(
        found(promise(EditionStatus::closed, "2026-05-01", MatrixFate::destroyed), "promised-fate"),
        Texts{});
}

}  // namespace
}  // namespace rackbook
