#include "AuditFixture.h"

namespace rackbook {
namespace {

using build::Book;

Book editionOf(int numbered, int artistsProofs) {
    Book book;
    book.edition("e", [&](Edition& r) {
        r.declaredNumbered = numbered;
        if (artistsProofs > 0)
            r.declaredProofs = {{DesignationKind::artistsProof, artistsProofs}};
    });
    return book;
}

void give(Book& book, int number, const std::string& designation, DesignationKind kind) {
    book.signedImpression("e", number, designation, kind, "2026-04-10");
}

TEST(DesignationTwice, IsAnErrorHoweverItIsWritten) {
    Book book = editionOf(30, 3);
    give(book, 1, "AP II/III", DesignationKind::artistsProof);
    give(book, 2, "A.P.  ii / iii", DesignationKind::artistsProof);
    EXPECT_EQ(found(book, "designation-twice"),
              Texts{"error: /designation impression e-2: impression 1 of the edition already "
                    "carries this designation (A.P.  ii / iii). Correct one of the two."});
}

TEST(DesignationTwice, IsAWarningForProofsWithoutANumber) {
    Book book = editionOf(30, 3);
    give(book, 1, "AP", DesignationKind::artistsProof);
    give(book, 2, "AP", DesignationKind::artistsProof);
    EXPECT_EQ(
        found(book, "designation-twice"),
        Texts{"warning: /designation impression e-2: impression 1 of the edition already carries "
              "this designation (AP). Number the proofs, or correct one of the two."});
}

TEST(DesignationTwice, AnotherEditionMayUseTheSame) {
    Book book = editionOf(30, 0);
    book.edition("f");
    give(book, 1, "1/30", DesignationKind::numbered);
    give(book, 2, "2/30", DesignationKind::numbered);
    book.signedImpression("f", 1, "1/30", DesignationKind::numbered, "2026-04-10");
    EXPECT_EQ(found(book, "designation-twice"), Texts{});
}

TEST(BonATirer, IsOneToAnEdition) {
    Book book = editionOf(30, 0);
    give(book, 1, "BAT", DesignationKind::bonATirer);
    EXPECT_EQ(found(book, "bat-twice"), Texts{});
    give(book, 2, "BAT", DesignationKind::bonATirer);
    EXPECT_EQ(found(book, "bat-twice"),
              Texts{"error: /designation impression e-2: impression 1 is the bon à tirer of the "
                    "edition already (BAT). Give one of the two another designation."});
    EXPECT_EQ(found(book, "designation-twice"), Texts{});
}

TEST(DesignationBeyondDeclared, NamesEachThatCannotBe) {
    Book book = editionOf(30, 3);
    give(book, 1, "31/30", DesignationKind::numbered);
    give(book, 2, "7/25", DesignationKind::numbered);
    give(book, 3, "31", DesignationKind::numbered);
    give(book, 4, "0/30", DesignationKind::numbered);
    give(book, 5, "AP 1/2", DesignationKind::artistsProof);
    give(book, 6, "AP IV", DesignationKind::artistsProof);
    const std::string remedy = " Correct the designation, or what the edition declares.";
    EXPECT_EQ(
        found(book, "designation-beyond-declared"),
        (Texts{"error: /designation impression e-1: number 31 lies beyond the 30 it is counted out "
               "of (31/30)." +
                   remedy,
               "error: /designation impression e-2: it is counted out of 25, but 30 are declared "
               "(7/25)." +
                   remedy,
               "error: /designation impression e-3: it is number 31, but 30 are declared (31)." +
                   remedy,
               "error: /designation impression e-4: numbering begins at 1 (0/30)." + remedy,
               "error: /designation impression e-5: it is counted out of 2, but 3 of its kind are "
               "declared (AP 1/2)." +
                   remedy,
               "error: /designation impression e-6: it is number 4, but 3 of its kind are declared "
               "(AP IV)." +
                   remedy}));
}

TEST(DesignationBeyondDeclared, LeavesWhatIsWithinOrNotDeclared) {
    Book book = editionOf(30, 3);
    give(book, 1, "30/30", DesignationKind::numbered);
    give(book, 2, "IV/X", DesignationKind::numbered);
    give(book, 3, "AP III/III", DesignationKind::artistsProof);
    give(book, 4, "PP 2/2", DesignationKind::printersProof);
    give(book, 5, "BAT", DesignationKind::bonATirer);
    EXPECT_EQ(found(book, "designation-beyond-declared"), Texts{});
    Book open;
    open.edition("e", [](Edition& r) { r.declaredNumbered.reset(); });
    give(open, 1, "40/40", DesignationKind::numbered);
    EXPECT_EQ(found(open, "designation-beyond-declared"), Texts{});
}

TEST(SigningIncomplete, NamesWhatIsMissing) {
    Book book = editionOf(3, 0);
    book.impressions("e", 1, 1, [](Impression& r) { r.signedOn = build::on("2026-04-10"); });
    book.impressions("e", 2, 2, [](Impression& r) { r.designation = "2/3"; });
    give(book, 3, "AP 1/3", DesignationKind::numbered);
    EXPECT_EQ(found(book, "signing-incomplete"),
              (Texts{"error: /designation impression e-1: it was signed, but carries no "
                     "designation. Record the designation as written.",
                     "error: /designationKind impression e-2: the kind of its designation is not "
                     "recorded (2/3). Record what the designation means.",
                     "warning: /designationKind impression e-3: the designation reads as artist's "
                     "proof, but its kind is numbered (AP 1/3). Correct one of the two."}));
}

TEST(SigningIncomplete, WantsDatesOnlyInAClosedEdition) {
    Book book = editionOf(3, 0);
    const auto undated = [](Impression& r) { r.signedOn.reset(); };
    book.signedImpression("e", 1, "1/3", DesignationKind::numbered, "2026", undated);
    book.signedImpression("e", 2, "SP", DesignationKind::stateProof, "2026", undated);
    EXPECT_EQ(found(book, "signing-incomplete"), Texts{});
    Book closed;
    closed.edition("e", [](Edition& r) { r.status = EditionStatus::closed; });
    closed.signedImpression("e", 1, "1/3", DesignationKind::numbered, "2026", undated);
    closed.signedImpression("e", 2, "2/3", DesignationKind::numbered, "2026", undated);
    EXPECT_EQ(found(closed, "signing-incomplete"),
              Texts{"note: edition e: no date of signing is recorded for impressions 1,2. Record "
                    "signedOn, as well as it is known."});
}

TEST(ProofsBeyondDeclared, CountsEachKind) {
    Book book = editionOf(30, 1);
    give(book, 1, "AP I", DesignationKind::artistsProof);
    EXPECT_EQ(found(book, "proofs-beyond-declared"), Texts{});
    give(book, 2, "AP II", DesignationKind::artistsProof);
    give(book, 3, "PP", DesignationKind::printersProof);
    EXPECT_EQ(
        found(book, "proofs-beyond-declared"),
        (Texts{"error: /declaredProofs/0/count edition e: 2 impressions are designated as artist's "
               "proof, but 1 is declared (1). Correct the designations or the declaration.",
               "warning: /declaredProofs edition e: 1 impression is designated as printer's proof, "
               "but none is declared. Declare them, or correct the designations."}));
}

TEST(ProofsBeyondDeclared, WhereNothingIsDeclaredNothingIsContradicted) {
    Book book = editionOf(30, 0);
    give(book, 1, "AP I", DesignationKind::artistsProof);
    EXPECT_EQ(found(book, "proofs-beyond-declared"), Texts{});
    Book trial = editionOf(30, 1);
    give(trial, 1, "TP", DesignationKind::trialProof);
    EXPECT_EQ(found(trial, "proofs-beyond-declared"), Texts{});
}

TEST(TotalsDiffer, AddsUpWhatIsDeclared) {
    Book book;
    const auto declare = [](int total) {
        return [total](Edition& r) {
            r.declaredNumbered = 30;
            r.declaredProofs = {{DesignationKind::artistsProof, 3},
                                {DesignationKind::bonATirer, 1}};
            r.declaredTotal = total;
        };
    };
    book.edition("e", declare(35)).edition("f", declare(34));
    EXPECT_EQ(found(book, "totals-differ"),
              Texts{"error: /declaredTotal edition e: 30 numbered impressions and 4 proofs are "
                    "declared, which makes 34 (35). Correct the total or its parts."});
}

TEST(TotalsDiffer, HoldsAClosedEditionToItsSize) {
    Book book;
    const auto close = [](Edition& r) { r.status = EditionStatus::closed; };
    book.edition("e", close).edition("f").edition("g", close);
    book.signedImpression("e", 1, "1/3", DesignationKind::numbered, "2026-04-10");
    book.signedImpression("f", 1, "1/3", DesignationKind::numbered, "2026-04-10");
    EXPECT_EQ(found(book, "totals-differ"),
              Texts{"warning: /declaredNumbered edition e: the edition is closed, but only 1 of "
                    "its 3 numbered impressions are recorded as kept (3). Record the missing ones, "
                    "or what became of them."});
}

TEST(TotalsDiffer, FindsMoreNumberedThanDeclared) {
    Book book = editionOf(1, 0);
    give(book, 1, "1/1", DesignationKind::numbered);
    EXPECT_EQ(found(book, "totals-differ"), Texts{});
    give(book, 2, "1/1", DesignationKind::numbered);
    EXPECT_EQ(found(book, "totals-differ"),
              Texts{"error: /declaredNumbered edition e: 2 numbered impressions are recorded, but "
                    "1 is declared (1). Correct the designations or the declaration."});
}

TEST(ProofsShare, PointsOutMoreThanIsUsual) {
    EXPECT_EQ(found(editionOf(30, 3), "proofs-share"), Texts{});
    EXPECT_EQ(found(editionOf(30, 4), "proofs-share"),
              Texts{"note: /declaredProofs/0/count edition e: artist's proofs are 13.3 % of the "
                    "numbered size, more than 10 % (4). Leave it if it is meant: workshop "
                    "definitions limit artist's proofs to 5 or 10 per cent of the edition."});
}

}  // namespace
}  // namespace rackbook
