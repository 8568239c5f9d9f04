#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;
using build::on;

TEST(DatesOutOfOrder, FindsASheetSignedAfterItWasDestroyed) {
    Book book;
    book.edition("e");
    const auto fate = [](const char* date) {
        return [date](Impression& r) {
            r.fate = ImpressionFate::destroyed;
            r.fateOn = on(date);
        };
    };
    book.signedImpression("e", 1, "1/3", DesignationKind::numbered, "2026-04-10",
                          fate("2026-04-09"));
    book.signedImpression("e", 2, "2/3", DesignationKind::numbered, "2026-04-10", fate("2026-04"));
    EXPECT_EQ(found(book, "dates-out-of-order"),
              Texts{"error: /signedOn impression e-1: it was signed after it was destroyed, on "
                    "2026-04-09 (2026-04-10). Correct one of the two dates."});
}

TEST(DatesOutOfOrder, FindsALookBeforeAnyPull) {
    Book book = soundBook();
    book.look("2026-03-03", {"e-1", "e-2"}, Touch::dry, LookColour::trueColour);
    book.look("2026-03-04", {"e-1"}, Touch::wet, LookColour::trueColour);
    EXPECT_EQ(found(book, "dates-out-of-order"),
              Texts{"error: /at look look2: impressions e:1,2 were looked at before any pull "
                    "(2026-03-03). Correct the date of the look or of the pull."});
}

TEST(DatesOutOfOrder, FindsAReadingBeforeItsDrawdown) {
    Book book = soundBook();
    Drawdown drawdown;
    drawdown.id = "swatch";
    drawdown.madeOn = on("2026-03-05");
    Reading early;
    early.id = "early";
    early.drawdown = Ref<Drawdown>{"swatch"};
    early.takenOn = on("2026-03-04");
    Reading good = early;
    good.id = "good";
    good.takenOn = on("2026-03-05");
    book.add(drawdown).add(early).add(good);
    EXPECT_EQ(found(book, "dates-out-of-order"),
              Texts{"error: /takenOn reading early: drawdown swatch was only made later, on "
                    "2026-03-05 (2026-03-04). Correct one of the two dates."});
}

TEST(DatesAhead, NotesWhatLiesInTheFuture) {
    Book book = soundBook();
    book.edition("f", [](Edition& r) {
        r.promisedMatrixFate = MatrixFate::cancelled;
        r.promisedBy = on("2027");
    });
    book.look("2026-06-02", {"e-1"}, Touch::dry, LookColour::trueColour);
    book.look("2026-06", {"e-1"}, Touch::dry, LookColour::trueColour);
    book.lot("red", LotKind::ink, [](Lot& r) { r.openedOn = on("2027-01-01"); });
    EXPECT_EQ(
        found(book, "dates-ahead"),
        (Texts{"note: /openedOn lot red: the date lies after 2026-06-01 (2027-01-01). Correct "
               "it, or record it once it has happened.",
               "note: /at look look2: the date lies after 2026-06-01 (2026-06-02). Correct "
               "it, or record it once it has happened."}));
}

TEST(EditionIncomplete, NamesAllThatIsMissing) {
    Book book;
    book.edition("e", [](Edition& r) {
        r.maker = {"nobody"};
        r.year.reset();
        r.imageHeight_mm.reset();
        r.sheetHeight_mm.reset();
        r.paper = "";
        r.declaredNumbered.reset();
        r.statement = "";
    });
    book.edition("f", [](Edition& r) { r.paper.reset(); }).edition("g");
    const std::string remedy = " Record what is known; its sheets leave the rest out.";
    EXPECT_EQ(found(book, "edition-incomplete"),
              (Texts{"note: edition e: the maker, the year, the image size, the sheet size, the "
                     "paper, the numbered size and the statement are not recorded." +
                         remedy,
                     "note: /paper edition f: the paper is not recorded." + remedy}));
}

TEST(LayerWithoutPull, IsNotedOnceLaterOnesWerePulledOrTheEditionIsClosed) {
    Book book;
    book.edition("e").layer("e", 1).layer("e", 2).layer("e", 3).pull("e-layer2", "2026", {});
    EXPECT_EQ(found(book, "layer-without-pull"),
              Texts{"note: layer e-layer1: no pull of it is recorded, though later layers were "
                    "pulled. Record the pull, as well as it is known."});
    Book closed;
    closed.edition("e", [](Edition& r) { r.status = EditionStatus::closed; }).layer("e", 1);
    EXPECT_EQ(
        found(closed, "layer-without-pull"),
        Texts{"note: layer e-layer1: no pull of it is recorded, though the edition is closed. "
              "Record the pull, as well as it is known."});
}

TEST(PullWithoutPortion, IsNotedOnceForAnEdition) {
    Book book = soundBook();
    EXPECT_EQ(found(book, "pull-without-portion"), Texts{});
    book.pull("e-layer2", "2026-03-07", {});
    EXPECT_EQ(found(book, "pull-without-portion"),
              Texts{"note: edition e: one pull names no portion (pull3). Record the portions; "
                    "without them nothing is known of the ink but what the layers remember."});
}

TEST(MixWithoutWeighings, IsNoted) {
    Book book = soundBook();
    book.mix("jar", MixPurpose::stock);
    book.weighing("jar", WeighingAct::withdraw, 5, "2026-03-07");
    EXPECT_EQ(
        found(book, "mix-without-weighings"),
        Texts{"note: mix jar: nothing is recorded to have gone into it. Record its additions; "
              "a mass that is not known may be left out."});
}

TEST(LotIncomplete, NotesInksWithoutPigmentsAndDriersWithoutContent) {
    Book book = soundBook();
    book.lot("red", LotKind::ink, [](Lot& r) { r.pigments.clear(); });
    book.lot("liquid", LotKind::drier, [](Lot& r) { r.drierMetals.clear(); });
    book.lot("paste", LotKind::drier, [](Lot& r) { r.drierMetals[0].contentShare.reset(); });
    const std::string remedy = " Record the metals and their shares from its label or data sheet.";
    EXPECT_EQ(found(book, "lot-incomplete"),
              (Texts{"note: /pigments lot red: the ink states no pigment. Record the Colour Index "
                     "generic names from its label.",
                     "note: /drierMetals lot liquid: the drier states no metal." + remedy,
                     "note: /drierMetals lot paste: the drier does not state how much metal it "
                     "holds." +
                         remedy}));
}

TEST(ContactWithheld, IsNoted) {
    Book book;
    book.party("buyer", [](Party& r) { r.contactWithheld = true; });
    EXPECT_EQ(found(book, "contact-withheld"),
              Texts{"note: /contactWithheld party buyer: its contact was left out of this copy of "
                    "the book. Ask for a copy with contacts, where it is needed."});
}

}  // namespace
}  // namespace rackbook
