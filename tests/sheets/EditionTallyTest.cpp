#include "sheets/EditionTally.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

std::vector<Impression> sheets(int count) {
    std::vector<Impression> all(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        all[static_cast<std::size_t>(i)].id = "e-" + std::to_string(i + 1);
        all[static_cast<std::size_t>(i)].workingNumber = i + 1;
    }
    return all;
}

void designate(Impression& impression, const std::string& designation, DesignationKind kind) {
    impression.designation = designation;
    impression.designationKind = kind;
}

// 34 sheets begun; 7 spoiled; 1 destroyed after signing; 20 + 3 + 1 + 1 declared; 13 numbered and
// 2 artist's proofs signed, the destroyed one among the numbered.
// Kept: 34 − 7 − 1 = 26. Kept and signed: 13 + 2 − 1 = 14. Kept and not signed: 26 − 14 = 12.
TEST(EditionTally, AddsUpByHand) {
    Edition edition;
    edition.declaredNumbered = 20;
    edition.declaredProofs = {{DesignationKind::printersProof, 1},
                              {DesignationKind::artistsProof, 3},
                              {DesignationKind::bonATirer, 1}};
    std::vector<Impression> all = sheets(34);
    std::set<std::string> first;
    for (const Impression& one : all)
        first.insert(one.id);
    for (std::size_t i = 0; i < 13; ++i)
        designate(all[i], std::to_string(i + 1) + "/20", DesignationKind::numbered);
    designate(all[13], "AP I/III", DesignationKind::artistsProof);
    designate(all[14], "AP II/III", DesignationKind::artistsProof);
    all[0].fate = ImpressionFate::destroyed;
    for (std::size_t i = 27; i < 34; ++i)
        all[i].fate = ImpressionFate::spoiled;
    const EditionTally tally = tallyOf(edition, all, first);
    EXPECT_EQ(tally.printedFirst, 34);
    EXPECT_EQ(tally.notInFirst, 0);
    EXPECT_EQ(tally.spoiled, 7);
    EXPECT_EQ(tally.destroyed, 1);
    EXPECT_EQ(tally.kept, 26);
    EXPECT_EQ(tally.keptSigned, 14);
    EXPECT_EQ(tally.keptUnsigned, 12);
    EXPECT_EQ(tally.declaredSum, 25);
    EXPECT_EQ(tally.designated, 15);
    ASSERT_EQ(tally.rows.size(), 4u);
    EXPECT_EQ(tally.rows[0].designationKind, DesignationKind::numbered);
    EXPECT_EQ(tally.rows[0].declared, 20);
    EXPECT_EQ(tally.rows[0].designated, 13);
    EXPECT_EQ(tally.rows[1].designationKind, DesignationKind::artistsProof);
    EXPECT_EQ(tally.rows[1].designated, 2);
    EXPECT_EQ(tally.rows[3].designationKind, DesignationKind::printersProof);
    EXPECT_EQ(tally.rows[3].designated, 0);
}

TEST(EditionTally, MakesUpNoDeclaredSumWithoutANumberedSize) {
    Edition edition;
    edition.declaredProofs = {{DesignationKind::artistsProof, 3}};
    const EditionTally tally = tallyOf(edition, sheets(2), {});
    EXPECT_FALSE(tally.declaredSum);
    EXPECT_FALSE(tally.rows[0].declared);
    EXPECT_FALSE(tally.printedFirst);
    EXPECT_EQ(tally.notInFirst, 2);
    EXPECT_EQ(tally.kept, 2);
}

TEST(EditionTally, CountsSheetsThatMissedTheFirstLayer) {
    const EditionTally tally = tallyOf(Edition{}, sheets(5), {"e-1", "e-2", "e-3", "of another"});
    EXPECT_EQ(tally.printedFirst, 3);
    EXPECT_EQ(tally.notInFirst, 2);
    EXPECT_EQ(*tally.printedFirst + tally.notInFirst - tally.spoiled - tally.destroyed, tally.kept);
}

TEST(EditionTally, CountsADesignationWithoutAKindApart) {
    std::vector<Impression> all = sheets(1);
    all[0].designation = "SP";
    const EditionTally tally = tallyOf(Edition{}, all, {});
    EXPECT_EQ(tally.designatedWithoutKind, 1);
    EXPECT_EQ(tally.designated, 1);
}

// Where the parts that are declared come to all that there are, other kinds are declared as none;
// else nothing is said of them.
TEST(EditionTally, DeclaresNoneOfOtherKindsOnlyWhereAllIsDeclared) {
    Edition edition;
    edition.declaredNumbered = 1;
    std::vector<Impression> all = sheets(2);
    designate(all[0], "1/1", DesignationKind::numbered);
    designate(all[1], "SP", DesignationKind::stateProof);
    EXPECT_FALSE(tallyOf(edition, all, {}).rows[1].declared);
    edition.declaredTotal = 1;
    EXPECT_EQ(tallyOf(edition, all, {}).rows[1].declared, 0);
    edition.declaredTotal = 2;
    EXPECT_FALSE(tallyOf(edition, all, {}).rows[1].declared);
}

// 1, 2 and 5 of 6 with one sheet that is not signed: 3 or 4 may be given to it, but not both. With
// two such sheets nothing is missing.
TEST(EditionTally, SeesGapsThatNoUnsignedSheetCanFill) {
    std::vector<Impression> all = sheets(4);
    designate(all[0], "1/6", DesignationKind::numbered);
    designate(all[1], "2/6", DesignationKind::numbered);
    designate(all[2], "5/6", DesignationKind::numbered);
    const EditionTally tally = tallyOf(Edition{}, all, {});
    ASSERT_TRUE(tally.withGaps);
    EXPECT_EQ(tally.withGaps->missing(), (std::vector<int>{3, 4, 6}));
    all = sheets(5);
    designate(all[0], "1/6", DesignationKind::numbered);
    designate(all[1], "2/6", DesignationKind::numbered);
    designate(all[2], "5/6", DesignationKind::numbered);
    EXPECT_FALSE(tallyOf(Edition{}, all, {}).withGaps);
}

}  // namespace
}  // namespace rackbook
